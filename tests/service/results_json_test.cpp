#include "service/results_json.h"

#include <nlohmann/json.hpp>

#include "support/catch.h"

using namespace gownsheaf;
using Json = nlohmann::json;

TEST_CASE("what the service says to programs is read back by them, whatever a stranger called a file", "[service][json]") {
  const std::string odd = "a \"cloak\"\\\t\n\x01\x7f \xe8\x8a\xb1.yaml";
  PacketResult failed;
  failed.project.path = odd;
  failed.state = PacketState::failed;
  failed.problem = "It is \xff\xfe not text.";
  PacketResult made;
  made.project = {"b.yaml", "b", ""};
  made.state = PacketState::made;
  made.record.emplace();
  made.record->fingerprint = "f1";
  made.record->pages = 3;
  made.record->about.title = odd;
  made.record->about.cloths = {{"wool", "2.50 m"}, {"linen", "1 m"}};

  const Json all = Json::parse(batch_json({failed, made}));
  CHECK(all["format"] == "gownsheaf batch 1");
  CHECK((all["made"] == 1 && all["current"] == 0 && all["failed"] == 1));
  REQUIRE(all["projects"].size() == 2);
  CHECK(all["projects"][0]["project"] == odd);
  CHECK(all["projects"][0]["problem"] == "It is \xef\xbf\xbd\xef\xbf\xbd not text.");
  CHECK(all["projects"][0].count("packet") == 0);
  const Json& second = all["projects"][1];
  CHECK((second["packet"] == "b.pdf" && second["fingerprint"] == "f1" && second["title"] == odd && second["pages"] == 3));
  CHECK(second["cloths"][0] == Json{{"cloth", "wool"}, {"needed", "2.50 m"}});
  CHECK(second["cloths"].size() == 2);

  made.record->about.shared = true;  // a guessed measure could be tried against it
  CHECK(Json::parse(batch_json({made}))["projects"][0].count("fingerprint") == 0);
  CHECK(Json::parse(batch_json({}))["projects"] == Json::array());

  for (const std::string& line :
       {result_json_line(failed), result_json_line(made), counts_json_line({2, 1, 0}), health_json_line({"working", 9, 1, 3})}) {
    CHECK(line.find('\n') == line.size() - 1);
    CHECK(Json::parse(line).is_object());
  }
  CHECK(Json::parse(result_json_line(failed))["project"] == odd);
  CHECK(counts_json_line({2, 1, 0}) == "{\"made\":2,\"current\":1,\"failed\":0}\n");
  CHECK(health_json_line({"working", 9, 1, 3}) == "{\"state\":\"working\",\"projects\":9,\"failed\":1,\"waiting\":3}\n");
}
