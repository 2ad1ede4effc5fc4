// The joint of what is shared and of one person, and a visit's zones about one point of it.
#pragma once

#include <Eigen/Core>
#include <compare>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "learned/response.h"

namespace strandline::learned {

inline constexpr int kOwn = 5;  // lift, depth, warmth, natural level and white of a person

double prior_sd(Whose whose, What what);
double& part(Effect& effect, What what);

// What is shared, then the five numbers of one person.
struct Joint {
  Eigen::VectorXd mean;
  Eigen::MatrixXd covariance;

  // Hair as it grew was read: `by` times the numbers, give or take `sd`. Further off than the gate it is other hair
  // than before, and what was known of it is forgotten.
  void read(double seen, const Eigen::VectorXd& by, double sd, int own, double own_sd);
  void read(const Response& response, int first_own, int eye);
};

struct Key {
  Whose whose;
  std::string id;
  What what;
  auto operator<=>(const Key&) const = default;
};

struct Model::State {
  // person | shared ~ N(of_shared · shared + base, left)
  struct Person {
    Eigen::MatrixXd of_shared;
    Eigen::VectorXd base;
    Eigen::MatrixXd left;
  };
  struct Tally {
    int learned = 0, within = 0;
  };

  int index_of(const Key& key) const;  // -1 = not yet
  void add(const Key& key);
  // Whoever has a hand in it.
  void ready_for(const Outcome& outcome);
  Person person(const std::string& id) const;
  Joint joint(const std::string& id) const;
  void keep(const std::string& id, const Joint& joint);
  // The same of what is shared and of one person alone.
  State of(const std::string& person) const;
  std::vector<Said> take(const Outcome& outcome, const Response& response);

  std::vector<Key> keys;
  std::map<Key, int> places;
  Eigen::VectorXd mean;
  Eigen::MatrixXd covariance;
  std::map<std::string, Person> people;
  std::map<std::string, Tally> tallies;
};

// What is compared of one zone: its level, and where it was measured a* and b* too.
struct Rows {
  int first = 0, count = 1;
};
// Zones' rows in the vector that is compared, `total` of them together.
std::vector<Rows> rows_of(const std::vector<Seen>& zones, int& total);
Eigen::VectorXd compared(const std::vector<Lab>& colours, const std::vector<Rows>& rows, int total);

// What is expected of a visit's zones, its derivatives by every number of the joint, and what else makes them scatter.
struct Local {
  Eigen::VectorXd expected;
  Eigen::MatrixXd by;        // rows × joint
  Eigen::MatrixXd scatter;   // of the true colour, about what is expected
  Eigen::VectorXd eye_only;  // 1 where an eye judged: a colourist's bias shows there once more
};
// Where a number stands in the joint; -1 = nowhere.
using Place = std::function<int(Whose, const std::string& id, What)>;
// The response about one point of the joint.
Local about(const Response& response, const std::vector<Rows>& rows, int total, const Eigen::VectorXd& at,
            const std::string& colourist, const Place& place);

}  // namespace strandline::learned
