// What must not come in: bytes as a stranger may send them, on a connection of their own.
#include <zlib.h>

#include "running.h"

namespace strandline::server {
namespace {

class Door : public Running {
 protected:
  // A request with our own Host; `lines` each end in CRLF.
  std::string request(const std::string& first, const std::string& lines = "", const std::string& body = "") const {
    return first + " HTTP/1.1\r\nHost: " + host() + "\r\n" + lines + "\r\n" + body;
  }
  std::string post(const std::string& path, const std::string& lines, const std::string& body) const {
    return request("POST " + path,
                   "Content-Type: application/json\r\nContent-Length: " + std::to_string(body.size()) + "\r\n" + lines,
                   body);
  }
  // The statuses of everything that came back.
  std::vector<int> statuses(const std::string& bytes) const {
    const std::string answer = raw(bytes);
    std::vector<int> out;
    for (std::size_t at = 0; (at = answer.find("HTTP/1.1 ", at)) != std::string::npos; at += 9)
      out.push_back(std::stoi(answer.substr(at + 9, 3)));
    return out;
  }
  bool still_answers() const { return statuses(request("GET /api/v1/health", "Connection: close\r\n")) == only(200); }
  static std::vector<int> only(int status) { return {status}; }
};

std::string gzipped(const std::string& text) {
  z_stream z{};
  EXPECT_EQ(deflateInit2(&z, Z_BEST_COMPRESSION, Z_DEFLATED, 31, 8, Z_DEFAULT_STRATEGY), Z_OK);
  std::string out(deflateBound(&z, text.size()), '\0');
  z.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
  z.avail_in = static_cast<uInt>(text.size());
  z.next_out = reinterpret_cast<Bytef*>(out.data());
  z.avail_out = static_cast<uInt>(out.size());
  EXPECT_EQ(deflate(&z, Z_FINISH), Z_STREAM_END);
  out.resize(z.total_out);
  deflateEnd(&z);
  return out;
}

TEST_F(Door, RefusesPackedBodiesBeforeUnpackingThem) {
  const std::string packed = gzipped(visit("all_over_brown"));
  for (const char* how : {"gzip", "br", "deflate", "gzip, identity", "x"}) {
    const std::string answer = raw(post("/api/v1/assess", "Content-Encoding: " + std::string(how) + "\r\n", packed));
    EXPECT_NE(answer.find(" 415 "), std::string::npos) << how << answer;
    EXPECT_NE(answer.find("packed_content"), std::string::npos) << how << answer;
  }
  EXPECT_EQ(
      statuses(post("/api/v1/assess", "Content-Encoding: identity\r\nConnection: close\r\n", visit("all_over_brown"))),
      only(200));
}

TEST_F(Door, AnswersRangesWithTheWholeFileOnce) {
  std::string many = "bytes=0-";
  for (int i = 0; i < 2600; ++i) many += ",0-";
  const std::string whole = raw(request("GET /", "Connection: close\r\n"));
  const std::string body = whole.substr(whole.find("\r\n\r\n"));
  for (const std::string& range : {std::string("bytes=0-3"), many, std::string("bytes=9-2"), std::string("nonsense")}) {
    const std::string answer = raw(request("GET /", "Range: " + range + "\r\nConnection: close\r\n"));
    EXPECT_NE(answer.find("HTTP/1.1 200 "), std::string::npos) << answer.substr(0, 200);
    EXPECT_EQ(answer.substr(answer.find("\r\n\r\n")), body);
  }
  EXPECT_EQ(raw(request("HEAD /", "Connection: close\r\n")).find("Accept-Ranges: bytes"), std::string::npos);
}

TEST_F(Door, LimitsAHead) {
  std::string lines;
  for (int i = 0; i < 101; ++i) lines += "X" + std::to_string(i) + ": a\r\n";
  EXPECT_EQ(statuses(request("GET /api/v1/health", lines)), only(431));
  EXPECT_EQ(statuses(request("GET /api/v1/health", "X: " + std::string(40000, 'a') + "\r\n")), only(431));
  EXPECT_EQ(statuses(request("GET /" + std::string(9000, 'a'))), only(414));
  EXPECT_EQ(statuses("GET /" + std::string(100000, 'a')), only(414));
  // Without an end: the connection must not keep what comes.
  EXPECT_EQ(statuses(request("GET /api/v1/health").substr(0, 40) + std::string(1 << 20, 'a')), only(431));
  EXPECT_TRUE(still_answers());
}

TEST_F(Door, AnswersBytesBeyondAsciiAs400) {
  EXPECT_EQ(statuses("GET /api/v1/health HTTP/1.1\r\nHost: \xff\xfe\r\n\r\n"), only(400));
  EXPECT_EQ(statuses(post("/api/v1/assess", "Origin: \xff\r\n", "{}")), only(400));
  EXPECT_EQ(statuses(request("POST /api/v1/assess", "Content-Type: \xff\r\nContent-Length: 2\r\n", "{}")), only(400));
  EXPECT_EQ(statuses(request("GET /\xff")), only(400));
  EXPECT_EQ(statuses(post("/api/v1/convert?range=%ff%fe", "", visit("my_own_bowls"))), only(400));
  EXPECT_EQ(statuses(post("/api/v1/substitute?product=%ff", "", visit("my_own_bowls"))), only(400));
  EXPECT_EQ(statuses(request("GET /%ff")), only(400));
  EXPECT_EQ(statuses(request("GET /%00")), only(400));
  EXPECT_EQ(statuses(request("GET /%0d%0aX:")), only(400));
  EXPECT_EQ(statuses(request("GET /%u00e9")), only(400));
  // The library undoes %xx in headers as well: it must find there what was sent.
  EXPECT_EQ(statuses("GET /api/v1/health HTTP/1.1\r\nHost: %6cocalhost\r\nConnection: close\r\n\r\n"), only(403));
  EXPECT_EQ(statuses("GET /api/v1/health HTTP/1.1\r\nHost: %ff\r\nConnection: close\r\n\r\n"), only(403));
  // What this server does not read may hold what it likes.
  EXPECT_EQ(statuses(request("GET /api/v1/health", "Cookie: n\xc3\xa9\r\nConnection: close\r\n")), only(200));
}

TEST_F(Door, RunsNoSecondRequestOutOfABody) {
  const std::string hidden = request("GET /api/v1/tones", "Connection: close\r\n");
  const std::string length = "Content-Length: " + std::to_string(hidden.size()) + "\r\n";
  for (const char* method : {"GET", "HEAD", "DELETE", "OPTIONS"}) {
    const std::string answer = raw(request(std::string(method) + " /api/v1/health", length, hidden));
    EXPECT_EQ(answer.find("strandline.tones"), std::string::npos) << method << answer;
    EXPECT_EQ(statuses(request(std::string(method) + " /api/v1/health", length, hidden)).size(), 1u) << method;
  }
  EXPECT_EQ(statuses(request("GET /api/v1/health", "Transfer-Encoding: chunked\r\n", hidden)), only(400));
  EXPECT_EQ(statuses(request("GET /api/v1/health", length, hidden)), only(400));
  // Requests one after the other are each answered.
  const std::string ask = request("GET /api/v1/health");
  EXPECT_EQ(statuses(ask + ask + hidden), std::vector<int>(3, 200));
}

TEST_F(Door, TakesLengthsOnlyInOneWay) {
  const std::string first = "POST /api/v1/assess", type = "Content-Type: application/json\r\n";
  for (const char* lines :
       {"Content-Length: -1\r\n", "Content-Length: +2\r\n", "Content-Length: 2, 2\r\n", "Content-Length: 0x2\r\n",
        "Content-Length: 99999999999999999999999\r\n", "Content-Length: 2\r\nContent-Length: 2\r\n",
        "Content-Length: 2\r\nTransfer-Encoding: chunked\r\n", "Transfer-Encoding: chunked\r\n", "",
        "Content-Length : 2\r\n", "Content-Length: 2\r\n X: folded\r\n", "Content-Length: 2\r\nno colon\r\n",
        "Content-Length: 2\nX: a\r\n", "Content-Length: 2\r\nX: a\rb\r\n", "Content-Length: 2\r\n: a\r\n"}) {
    EXPECT_EQ(statuses(request(first, type + lines, "{}")), only(400)) << lines;
  }
  EXPECT_EQ(statuses(request(first, type + "Content-Length: 4194305\r\n", "{}")), only(413));
  EXPECT_TRUE(still_answers());
}

TEST_F(Door, TakesOnlyRequestsThatReadAsOne) {
  for (const char* head : {"GET /api/v1/health HTTP/1.1\r\n\r\n", "GET /api/v1/health HTTP/1.1\r\nHost:\r\n\r\n",
                           "GET http://localhost/api/v1/health HTTP/1.1\r\nHost: localhost\r\n\r\n",
                           "GET  /api/v1/health HTTP/1.1\r\nHost: localhost\r\n\r\n", "nonsense\r\n\r\n",
                           "GET /api/v1/health HTTP/9.9\r\nHost: localhost\r\n\r\n", "PRI * HTTP/2.0\r\n\r\n",
                           "GET /api/v1/health HTTP/1.1\nHost: localhost\n\n\r\n\r\n",
                           "GET / HTTP/1.1\r\nHost: localhost\r\nHost: localhost\r\n\r\n"}) {
    EXPECT_EQ(statuses(head), only(400)) << head;
  }
  for (const char* method : {"DELETE", "OPTIONS", "TRACE", "PATCH", "CONNECT", "FOO"}) {
    EXPECT_EQ(statuses(request(std::string(method) + " /api/v1/visits")), only(405)) << method;
  }
  for (const char* name : {"evil.example@127.0.0.1", "localhost.", "127.1", "localhost:evil.example", "localhost:"}) {
    EXPECT_EQ(statuses("GET /api/v1/health HTTP/1.1\r\nHost: " + std::string(name) + "\r\nConnection: close\r\n\r\n"),
              only(403))
        << name;
  }
  EXPECT_TRUE(still_answers());
}

TEST_F(Door, ClosesWhenAskedAndSaysSo) {
  for (const char* lines : {"Connection: close\r\n", "connection: Keep-Alive, CLOSE\r\n"}) {
    const std::string answer = raw(request("GET /api/v1/health", lines) + request("GET /api/v1/tones"));
    EXPECT_NE(answer.find("\r\nConnection: close\r\n"), std::string::npos) << answer;
    EXPECT_EQ(answer.find("Keep-Alive"), std::string::npos) << answer;
    EXPECT_EQ(answer.find("strandline.tones"), std::string::npos) << answer;
  }
  const std::string old = raw("GET /api/v1/health HTTP/1.0\r\nHost: localhost\r\n\r\n");
  EXPECT_NE(old.find("\r\nConnection: close\r\n"), std::string::npos) << old;
  // A connection that ends because its request was refused says so too.
  const std::string refused = raw(post("/api/v1/assess", "Content-Type: text/plain\r\n", "{}"));
  EXPECT_NE(refused.find("\r\nConnection: close\r\n"), std::string::npos) << refused;
  const std::string kept = raw(request("GET /api/v1/health") + request("GET /api/v1/health", "Connection: close\r\n"));
  EXPECT_EQ(kept.substr(0, kept.find("\r\n\r\n")).find("Connection: close"), std::string::npos) << kept;
}

}  // namespace
}  // namespace strandline::server
