// The door for other machines: encrypted, and for paired devices only. Asked over TLS at 127.0.0.2.
#include <openssl/pem.h>
#include <sys/stat.h>

#include "access.h"
#include "running.h"
#include "tls/leaf.h"

namespace strandline::server {
namespace {

constexpr std::int64_t day_s = 86400, now_s = 1775000000;
const std::string good = "brown tape on blue jars", other = "seven wet towels at nine", address = "127.0.0.2";

class Folder : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() / ("strandline-lan-" + std::to_string(getpid()));
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  std::filesystem::path authority() const { return folder_ / "salon.sqlite-authority"; }

  std::filesystem::path folder_;
};

std::string code_of_trouble(const Result<Authority>& got) { return got ? "" : got.error().front().code; }

TEST_F(Folder, AnAuthorityIsMadeOnceForItsOwnerAlone) {
  const auto made = open_authority(authority(), now_s);
  ASSERT_TRUE(made);
  struct stat found{};
  ASSERT_EQ(stat(authority().c_str(), &found), 0);
  EXPECT_EQ(found.st_mode & 0777, 0600u);
  const auto again = open_authority(authority(), now_s + day_s);
  ASSERT_TRUE(again);
  EXPECT_EQ(made->fingerprint(), again->fingerprint());
  EXPECT_EQ(made->fingerprint().size(), 95u);
  EXPECT_EQ(made->pem().find("PRIVATE"), std::string::npos) << "its key is told to nobody";
}

TEST_F(Folder, AnAuthorityThatCannotBeReadIsNeverReplaced) {
  std::ofstream(authority()) << "not a certificate";
  EXPECT_EQ(code_of_trouble(open_authority(authority(), now_s)), "authority_unreadable");
  EXPECT_EQ(text_of(authority()), "not a certificate");
  std::filesystem::remove(authority());
  ASSERT_TRUE(open_authority(authority(), now_s));
  EXPECT_EQ(code_of_trouble(open_authority(authority(), now_s + authority_days * day_s)), "authority_expired");
  EXPECT_EQ(code_of_trouble(open_authority(folder_ / "none" / "x", now_s)), "authority_unwritable");
}

TEST_F(Folder, TheCertificateIsRenewedByItself) {
  std::int64_t now = now_s;
  std::vector<std::string> names{"192.168.1.5", "salon.local"};
  Leaf leaf(*open_authority(authority(), now), [&] { return names; }, [&] { return now; });
  const auto first = leaf.context();
  EXPECT_FALSE(leaf.renew()) << "young";
  now += 19 * day_s;
  EXPECT_FALSE(leaf.renew());
  now += 2 * day_s;
  EXPECT_TRUE(leaf.renew()) << "less than a third is left";
  EXPECT_NE(leaf.context(), first);
  names = {"192.168.1.9", "salon.local"};
  EXPECT_TRUE(leaf.renew()) << "the machine has another address";
  names = {};
  EXPECT_FALSE(leaf.renew()) << "without a network nothing better can be had";
  EXPECT_EQ(leaf.names().front(), "192.168.1.9");
}

// By OpenSSL's own rules, as a device would.
bool trusted(const Authority& authority, SSL_CTX* served, const std::string& name, std::int64_t at) {
  const std::unique_ptr<X509_STORE, decltype(&X509_STORE_free)> roots(X509_STORE_new(), X509_STORE_free);
  const std::unique_ptr<X509_STORE_CTX, decltype(&X509_STORE_CTX_free)> look(X509_STORE_CTX_new(), X509_STORE_CTX_free);
  X509_STORE_add_cert(roots.get(), authority.certificate.get());
  X509_STORE_CTX_init(look.get(), roots.get(), SSL_CTX_get0_certificate(served), nullptr);
  X509_VERIFY_PARAM* how = X509_STORE_CTX_get0_param(look.get());
  X509_VERIFY_PARAM_set_time(how, at);
  X509_VERIFY_PARAM_set_purpose(how, X509_PURPOSE_SSL_SERVER);
  if (private_address(name))
    X509_VERIFY_PARAM_set1_ip_asc(how, name.c_str());
  else
    X509_VERIFY_PARAM_set1_host(how, name.c_str(), 0);
  return X509_verify_cert(look.get()) == 1;
}

TEST_F(Folder, TheAuthoritySpeaksForPrivateNetworksOnly) {
  const auto authority_file = open_authority(authority(), now_s);
  ASSERT_TRUE(authority_file);
  const Authority& mine = *authority_file;
  const auto own = leaf_context(mine, {"192.168.1.5", "fd00::5", "salon.local"}, now_s);
  for (const char* name : {"192.168.1.5", "fd00::5", "salon.local"})
    EXPECT_TRUE(trusted(mine, own.get(), name, now_s)) << name;
  EXPECT_FALSE(trusted(mine, own.get(), "192.168.1.6", now_s));
  EXPECT_TRUE(trusted(mine, own.get(), "salon.local", now_s + 29 * day_s));
  EXPECT_FALSE(trusted(mine, own.get(), "salon.local", now_s + 31 * day_s));
  EXPECT_FALSE(trusted(mine, leaf_context(mine, {"bank.example"}, now_s).get(), "bank.example", now_s));
  EXPECT_FALSE(trusted(mine, leaf_context(mine, {"9.9.9.9"}, now_s).get(), "9.9.9.9", now_s));
}

TEST(Lan, IsOfPrivateNetworks) {
  for (const char* in :
       {"10.0.0.1", "172.16.0.1", "172.31.255.1", "192.168.3.4", "169.254.1.1", "fd12::1", "0.0.0.0", "::"})
    EXPECT_TRUE(may_listen(in)) << in;
  for (const char* out : {"8.8.8.8", "172.32.0.1", "192.169.0.1", "2001:db8::1", "salon.local", "", "10.0.0"})
    EXPECT_FALSE(may_listen(out)) << out;
}

class Networked : public Folder {
 protected:
  void SetUp() override {
    Folder::SetUp();
    auto house = salon::open_house({.shelf = {}, .policy = {}, .knowledge = root / "knowledge"});
    auto world = salon::real_world(":memory:");
    auto leaf = open_leaf(authority(), address);
    ASSERT_TRUE(house && world && leaf);
    house->doors.hash = {1, 1};
    ServerOptions options{.port = 0, .web = web_folder(), .allowed_hosts = {}};
    options.leaf = *leaf, options.lan_host = address, options.lan_port = 0;
    server_ = std::make_unique<Server>(std::move(options), std::move(*world), std::move(*house));
    const auto port = server_->bind();
    ASSERT_TRUE(port && server_->bind_lan());
    thread_ = std::thread([this] { server_->run(); });
    while (!server_->running()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    here_ = std::make_unique<httplib::Client>("127.0.0.1", *port);
    std::ofstream(folder_ / "trusted.crt") << here_->Get("/api/v1/door/authority")->body;
    there_ = device();
  }
  void TearDown() override {
    here_.reset(), there_.reset();
    if (server_) server_->stop();
    if (thread_.joinable()) thread_.join();
    Folder::TearDown();
  }

  // A device that was told to trust the salon's authority and nothing else.
  std::unique_ptr<httplib::SSLClient> device() {
    auto out = std::make_unique<httplib::SSLClient>(address, server_->lan_port());
    out->set_ca_cert_path((folder_ / "trusted.crt").c_str());
    out->enable_server_certificate_verification(true);
    return out;
  }
  static Json read(const httplib::Result& got) { return Json::parse(got->body); }
  static std::string code_of(const httplib::Result& got) { return read(got)["problems"][0]["code"]; }
  static std::string cookie_of(const httplib::Result& got) {
    const std::string cookie = got->get_header_value("Set-Cookie");
    return cookie.substr(0, cookie.find(';'));
  }
  template <class Client>
  static httplib::Result post(Client& client, const std::string& path, const Json& body,
                              const std::string& cookies = "") {
    return client.Post(path, cookies.empty() ? httplib::Headers{} : httplib::Headers{{"Cookie", cookies}},
                       wire::print(body), "application/json");
  }
  std::string found() {
    return cookie_of(post(*here_, "/api/v1/door/found",
                          {{"name", "Ada"}, {"passphrase", good}, {"zone", "UTC"}, {"shelf", "invented"}}));
  }
  std::string invited(const std::string& owner) {
    return read(post(*here_, "/api/v1/devices/invite", Json::object(), owner))["code"];
  }
  std::string sign_in(const std::string& device) {
    return cookie_of(post(*there_, "/api/v1/door/sign-in", {{"name", "Ada"}, {"passphrase", good}}, device));
  }

  std::unique_ptr<Server> server_;
  std::unique_ptr<httplib::Client> here_;
  std::unique_ptr<httplib::SSLClient> there_;
  std::thread thread_;
};

TEST_F(Networked, NothingIsAnsweredInTheClear) {
  httplib::Client plain(address, server_->lan_port());
  EXPECT_FALSE(plain.Get("/api/v1/health"));
  httplib::SSLClient mistrustful(address, server_->lan_port());
  mistrustful.enable_server_certificate_verification(true);
  EXPECT_FALSE(mistrustful.Get("/api/v1/health")) << "without its authority the certificate is nobody's";
  const auto health = there_->Get("/api/v1/health");
  ASSERT_TRUE(health);
  EXPECT_EQ(health->status, 200);
  EXPECT_NE(health->get_header_value("Strict-Transport-Security"), "");
  EXPECT_EQ(here_->Get("/api/v1/health")->get_header_value("Strict-Transport-Security"), "");
}

TEST_F(Networked, ADeviceThatIsNotPairedGetsNothing) {
  EXPECT_EQ(post(*there_, "/api/v1/door/found",
                 {{"name", "Eve"}, {"passphrase", good}, {"zone", "UTC"}, {"shelf", "invented"}})
                ->status,
            403)
      << "an owner is made at the salon's machine only";
  const std::string owner = found();
  for (const Access& row : access_table()) {
    std::string path(row.path);
    if (const auto at = path.find("{id}"); at != std::string::npos) path.replace(at, 4, "nobody-1");
    for (const std::string& cookies : {std::string(), owner, std::string("strandline-device=madeup")}) {
      const httplib::Headers headers{{"Cookie", cookies}};
      const auto got = row.method == "GET"   ? there_->Get(path, headers)
                       : row.method == "PUT" ? there_->Put(path, headers, "{}", "application/json")
                                             : there_->Post(path, headers, "{}", "application/json");
      ASSERT_TRUE(got) << path;
      const Json body = Json::parse(got->body, nullptr, false);
      const std::string code = body.is_object() && body.contains("problems") ? body["problems"][0]["code"] : Json("");
      const std::string kept_out = row.here_only ? "not_found" : "not_paired";
      EXPECT_EQ(code == kept_out, !row.unpaired) << row.method << ' ' << path << ' ' << code;
    }
  }
  EXPECT_EQ(read(there_->Get("/api/v1/door"))["elsewhere"], true);
  EXPECT_EQ(read(here_->Get("/api/v1/door"))["elsewhere"], false);
}

TEST_F(Networked, AnInvitationPairsOneDeviceOnce) {
  const std::string owner = found(), first = invited(owner), second = invited(owner);
  EXPECT_EQ(code_of(post(*there_, "/api/v1/door/redeem", {{"code", first}, {"name", "Tablet"}})), "invitation_gone")
      << "the next one made it void";
  const auto paired = post(*there_, "/api/v1/door/redeem", {{"code", second}, {"name", "Tablet"}});
  ASSERT_EQ(paired->status, 200) << paired->body;
  EXPECT_NE(paired->get_header_value("Set-Cookie").find("; Secure"), std::string::npos);
  EXPECT_EQ(code_of(post(*there_, "/api/v1/door/redeem", {{"code", second}, {"name", "Tablet"}})), "invitation_gone");
  const std::string device = cookie_of(paired), session = sign_in(device);
  EXPECT_EQ(there_->Get("/api/v1/visits", {{"Cookie", device + "; " + session}})->status, 200);
}

TEST_F(Networked, ASessionIsWorthNothingOnAnotherDevice) {
  const std::string owner = found();
  const std::string one = cookie_of(post(*there_, "/api/v1/door/redeem", {{"code", invited(owner)}, {"name", "One"}}));
  const std::string two = cookie_of(post(*there_, "/api/v1/door/redeem", {{"code", invited(owner)}, {"name", "Two"}}));
  const std::string session = sign_in(one);
  EXPECT_EQ(there_->Get("/api/v1/visits", {{"Cookie", one + "; " + session}})->status, 200);
  EXPECT_EQ(code_of(there_->Get("/api/v1/visits", {{"Cookie", two + "; " + session}})), "not_signed_in");
  EXPECT_EQ(code_of(there_->Get("/api/v1/visits", {{"Cookie", session}})), "not_paired");
}

TEST_F(Networked, ADeviceThatIsTakenOffTheListIsOutAtOnce) {
  const std::string owner = found();
  const auto paired = post(*there_, "/api/v1/door/redeem", {{"code", invited(owner)}, {"name", "Tablet"}});
  const std::string device = cookie_of(paired), both = device + "; " + sign_in(device);
  ASSERT_EQ(there_->Get("/api/v1/visits", {{"Cookie", both}})->status, 200);
  const std::string id = read(paired)["device"]["id"];
  ASSERT_EQ(post(*here_, "/api/v1/devices/" + id + "/unpair", Json::object(), owner)->status, 200);
  EXPECT_EQ(code_of(there_->Get("/api/v1/visits", {{"Cookie", both}})), "not_paired");
  EXPECT_EQ(code_of(post(*there_, "/api/v1/door/sign-in", {{"name", "Ada"}, {"passphrase", good}}, device)),
            "not_paired");
}

TEST_F(Networked, OnlyItsOwnNamesAndPagesAreAnswered) {
  EXPECT_EQ(code_of(there_->Get("/api/v1/door", {{"Host", "evil.example"}})), "host_not_allowed");
  EXPECT_EQ(code_of(there_->Get("/api/v1/door", {{"Origin", "https://evil.example"}})), "origin_not_allowed");
  EXPECT_EQ(there_->Get("/")->status, 200);
}

TEST_F(Networked, ManyRequestsOnOneConnectionAreAnswered) {
  const auto one = device();
  one->set_keep_alive(true);
  for (int i = 0; i < 20; ++i) ASSERT_TRUE(one->Get("/api/v1/health")) << i;
}

}  // namespace
}  // namespace strandline::server
