#include "service/results_json.h"

#include <nlohmann/json.hpp>

namespace gownsheaf {
namespace {

using Json = nlohmann::ordered_json;

std::string written(const Json& json, int indent = -1) {
  return json.dump(indent, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json packet_json(const PacketResult& result) {
  Json json{{"project", result.project.path}, {"state", std::string(word_for(result.state))}};
  if (result.state == PacketState::failed) json["problem"] = result.problem;
  return json;
}

void add_record(Json& json, const PacketResult& result) {
  const PacketFacts& about = result.record->about;
  json["packet"] = result.project.stem + ".pdf";
  if (!about.shared) json["fingerprint"] = result.record->fingerprint;
  json["title"] = about.title;
  json["wearer"] = about.wearer;
  json["pages"] = result.record->pages;
  json["holds"] = about.holds;
  json["warnings"] = about.warnings;
  Json cloths = Json::array();
  for (const auto& cloth : about.cloths) cloths.push_back({{"cloth", cloth.cloth}, {"needed", cloth.needed}});
  json["cloths"] = std::move(cloths);
}

}  // namespace

std::string batch_json(const std::vector<PacketResult>& results) {
  PacketCounts counts;
  Json projects = Json::array();
  for (const PacketResult& result : results) {
    ++(result.state == PacketState::made ? counts.made : result.state == PacketState::current ? counts.current : counts.failed);
    projects.push_back(packet_json(result));
    if (result.record) add_record(projects.back(), result);
  }
  return written({{"format", "gownsheaf batch 1"},
                  {"projects", std::move(projects)},
                  {"made", counts.made},
                  {"current", counts.current},
                  {"failed", counts.failed}},
                 2);
}

std::string result_json_line(const PacketResult& result) {
  Json json = packet_json(result);
  if (result.state != PacketState::failed) json["packet"] = result.project.stem + ".pdf";
  return written(json);
}

std::string pruned_json_line(const std::string& file, bool removed) {
  return written({{"file", file}, {"state", removed ? "removed" : "gone"}});
}

std::string counts_json_line(const PacketCounts& counts) {
  return written({{"made", counts.made}, {"current", counts.current}, {"failed", counts.failed}});
}

std::string health_json_line(const Health& health) {
  return written(
      {{"state", health.state}, {"projects", health.projects}, {"failed", health.failed}, {"waiting", health.waiting}});
}

}  // namespace gownsheaf
