#include "strandline/salon/desk.h"

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <stdexcept>

namespace strandline::salon {
namespace {

const Desk::Gone kStays = [] { return false; };

void nap() { std::this_thread::sleep_for(std::chrono::milliseconds(1)); }

// A desk with one place, which somebody holds until told to let go.
struct Held {
  explicit Held(int waiting_most = 100) : desk(1, waiting_most) {
    holder = std::thread([this] {
      desk.ask(
          "held",
          [this](const Desk::Gone&) {
            taken = true;
            while (!free) nap();
          },
          kStays);
    });
    while (!taken) nap();
  }
  ~Held() {
    free = true;
    holder.join();
  }
  Desk desk;
  std::atomic<bool> taken = false, free = false;
  std::thread holder;
};

TEST(Desk, GivesEachKindItsTurnAndNoCrowdTheFirst) {
  std::string order;
  std::vector<std::thread> clients;
  {
    Held held;
    std::atomic<int> waiting = 0;
    const auto ask = [&](const char* kind) {
      clients.emplace_back([&, kind] {
        ++waiting;
        held.desk.ask(kind, [&, kind](const Desk::Gone&) { order += kind; }, kStays);
      });
    };
    for (int i = 0; i < 32; ++i) ask("r");
    while (waiting < 32) nap();
    std::this_thread::sleep_for(std::chrono::milliseconds(200));  // until they stand in line
    ask("p");
    while (waiting < 33) nap();
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
    held.free = true;
    for (std::thread& client : clients) client.join();
  }
  ASSERT_EQ(order.size(), 33u);
  EXPECT_LE(order.find('p'), 1u) << order;
}

TEST(Desk, TurnsAwayWhoFindsTheLineFullAndForgetsWhoLeaves) {
  Held held(1);
  std::atomic<bool> gone = false;
  std::atomic<Desk::End> end = Desk::End::done;
  std::atomic<bool> ran = false;
  std::thread patient(
      [&] { end = held.desk.ask("a", [&](const Desk::Gone&) { ran = true; }, [&] { return gone.load(); }); });
  std::this_thread::sleep_for(std::chrono::milliseconds(200));
  EXPECT_EQ(held.desk.ask("b", [](const Desk::Gone&) {}, kStays), Desk::End::full);
  const Desk::Load full = held.desk.load();
  EXPECT_EQ(full.running, 1);
  EXPECT_EQ(full.waiting, 1);
  EXPECT_EQ(full.refused, 1u);
  gone = true;
  patient.join();
  EXPECT_EQ(end, Desk::End::left);
  EXPECT_EQ(held.desk.load().waiting, 0);
  EXPECT_EQ(held.desk.load().left, 1u);
  held.free = true;
  EXPECT_EQ(held.desk.ask("b", [](const Desk::Gone&) {}, kStays), Desk::End::done);
  EXPECT_FALSE(ran);
}

TEST(Desk, TellsWorkThatNobodyWaitsAndThrowsWhatItThrew) {
  Desk desk(1, 8);
  EXPECT_EQ(desk.ask(
                "a",
                [](const Desk::Gone& unwanted) {
                  while (!unwanted()) nap();
                },
                [] { return true; }),
            Desk::End::done);
  EXPECT_THROW(desk.ask("a", [](const Desk::Gone&) { throw std::runtime_error("x"); }, kStays), std::runtime_error);
}

}  // namespace
}  // namespace strandline::salon
