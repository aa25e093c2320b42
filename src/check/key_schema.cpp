// JSON Schema of the project file (draft 2020-12), for editors. An editor's own YAML reader types scalars, so names,
// sizes, counts and dates allow text and number, and `yes` allows true; what a text means, only the checker knows.
#include "check/key_spec.h"
#include "check/names.h"
#include "check/ordered_json.h"
#include "check/reading.h"

namespace gownsheaf {

namespace {

void write_block(OrderedJson& json, std::string_view path);

// The rows of one scalar kind, as members of an `anyOf` list.
void write_scalar(OrderedJson& json, const KeySpec& spec, KeyKind kind) {
  const auto type = [&](std::string_view name) { json.open('{').key("type").text(name).close(); };
  switch (kind) {
    case KeyKind::yes_no:
      type("boolean");
      json.open('{').key("enum").open('[').text("yes").text("no").text("true").text("false").close().close();
      break;
    case KeyKind::word: {
      json.open('{').key("enum").open('[');
      for (const std::string& word : parted(spec.words, '|')) json.text(word);
      json.close().close();
      break;
    }
    case KeyKind::count:
    case KeyKind::ratio:
    case KeyKind::number:
    case KeyKind::name:
    case KeyKind::text:
    case KeyKind::day:
    case KeyKind::fineness:
    case KeyKind::pairs:
      type("string");
      type("number");
      break;
    default: type("string");
  }
}

void write_item(OrderedJson& json, const KeySpec& spec, KeyKind kind, std::string_view below) {
  json.open('{').key("anyOf").open('[');
  if (kind != KeyKind::block) write_scalar(json, spec, kind);
  if (kind != KeyKind::block && spec.or_kind) write_scalar(json, spec, *spec.or_kind);
  if (kind == KeyKind::block || !keys_below(below).empty()) write_block(json, below);
  json.close().close();
}

void write_key(OrderedJson& json, const KeySpec& spec) {
  json.open('{');
  json.key("title").text(last_part(spec.path));
  std::string meaning(spec.meaning);
  if (spec.first_needed > 1) meaning += " Read, but not worked out yet.";
  json.key("description").text(meaning);
  const std::string below = std::string(spec.path) + "/*";
  if (spec.kind == KeyKind::any_of_these && spec.words.empty()) {
    json.close();  // a whole section stands here
    return;
  }
  json.key("anyOf").open('[');
  switch (spec.kind) {
    case KeyKind::list:
      write_item(json, spec, spec.each, below);
      json.open('{').key("type").text("array").key("items");
      write_item(json, spec, spec.each, below);
      json.close();
      break;
    case KeyKind::any_of_these:
      write_scalar(json, spec, KeyKind::word);
      json.open('{').key("type").text("array").key("items");
      json.open('{').key("anyOf").open('[');
      write_scalar(json, spec, KeyKind::word);
      json.close().close().close();
      break;
    case KeyKind::map:
      json.open('{').key("type").text("object").key("additionalProperties");
      write_item(json, spec, spec.each, below);
      json.close();
      break;
    case KeyKind::block: write_block(json, spec.path); break;
    default:
      write_scalar(json, spec, spec.kind);
      if (spec.or_kind) write_scalar(json, spec, *spec.or_kind);
      if (spec.kind != KeyKind::word && !spec.words.empty()) write_scalar(json, spec, KeyKind::word);
      if (!keys_below(spec.path).empty()) write_block(json, spec.path);
  }
  if (may_be_none(spec)) json.open('{').key("const").text(kNone).close();
  json.close().close();
}

void write_block_members(OrderedJson& json, std::string_view path) {
  const auto& keys = keys_below(path);
  json.key("type").text("object").key("properties").open('{');
  const KeySpec* open_names = nullptr;
  for (const KeySpec* spec : keys) {
    if (last_part(spec->path) == "*") {
      open_names = spec;
      continue;
    }
    json.key(last_part(spec->path));
    write_key(json, *spec);
  }
  json.close().key("required").open('[');
  for (const KeySpec* spec : keys)
    if (spec->required) json.text(last_part(spec->path));
  json.close().key("additionalProperties");
  if (open_names == nullptr) json.raw("false");
  else write_key(json, *open_names);
}

void write_block(OrderedJson& json, std::string_view path) {
  json.open('{');
  write_block_members(json, path);
  json.close();
}

}  // namespace

std::string json_schema() {
  OrderedJson json;
  json.open('{');
  json.key("$schema").text("https://json-schema.org/draft/2020-12/schema");
  json.key("title").text("Gownsheaf project");
  json.key("description").text("A garment to be sewn: who and when, the body, cloths, pieces, pleats, work and paper.");
  write_block_members(json, "");
  json.close();
  return json.take();
}

}  // namespace gownsheaf
