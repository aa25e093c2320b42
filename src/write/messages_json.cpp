#include "write/messages_json.h"

#include <nlohmann/json.hpp>

namespace gownsheaf {
namespace {

// Text from a damaged file may not be UTF-8; a log line must be all the same.
std::string line(const nlohmann::ordered_json& object) {
  return object.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

}  // namespace

std::string message_json(const Diagnostic& d) {
  nlohmann::ordered_json object;
  object["severity"] = std::string(word_for(d.severity));
  object["code"] = d.code;
  object["file"] = d.at.file.text();
  if (d.at.line > 0) {
    object["line"] = d.at.line;
    object["column"] = d.at.column;
    object["length"] = d.at.length;
  }
  object["sentence"] = d.sentence;
  if (!d.hint.empty()) object["hint"] = d.hint;
  if (!d.item.empty()) object["item"] = d.item;
  if (!d.accepted_because.empty()) object["decided because"] = d.accepted_because;
  return line(object);
}

std::string info_json(const std::string& sentence) {
  nlohmann::ordered_json object;
  object["severity"] = "info";
  object["sentence"] = sentence;
  return line(object);
}

}  // namespace gownsheaf
