#include "check/ordered_json.h"

namespace gownsheaf {

namespace {

std::string quoted(std::string_view text) {
  constexpr char kHex[] = "0123456789abcdef";
  std::string made = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      made += '\\';
      made += c;
    } else if (static_cast<unsigned char>(c) < 0x20) {
      made += "\\u00";
      made += kHex[static_cast<unsigned char>(c) >> 4];
      made += kHex[static_cast<unsigned char>(c) & 15];
    } else {
      made += c;
    }
  }
  return made + "\"";
}

}  // namespace

void OrderedJson::line() {
  out_ += '\n';
  out_.append(open_.size() * 2, ' ');
}

void OrderedJson::begin_value() {
  if (after_key_) {
    after_key_ = false;
    return;
  }
  if (!first_) out_ += ',';
  if (!open_.empty()) line();
  first_ = false;
}

OrderedJson& OrderedJson::open(char bracket) {
  begin_value();
  out_ += bracket;
  open_.push_back(bracket);
  first_ = true;
  return *this;
}

OrderedJson& OrderedJson::close() {
  const char bracket = open_.back();
  open_.pop_back();
  if (!first_) line();
  out_ += bracket == '{' ? '}' : ']';
  first_ = false;
  return *this;
}

OrderedJson& OrderedJson::key(std::string_view name) {
  begin_value();
  out_ += quoted(name) + ": ";
  after_key_ = true;
  return *this;
}

OrderedJson& OrderedJson::text(std::string_view value) {
  begin_value();
  out_ += quoted(value);
  return *this;
}

OrderedJson& OrderedJson::raw(std::string_view value) {
  begin_value();
  out_ += value;
  return *this;
}

std::string OrderedJson::take() { return std::move(out_) + "\n"; }

}  // namespace gownsheaf
