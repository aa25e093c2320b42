// JSON text in the order it is written, indented by two. Just enough for the schema.
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace gownsheaf {

class OrderedJson {
 public:
  OrderedJson& open(char bracket);  // { or [
  OrderedJson& close();
  OrderedJson& key(std::string_view name);
  OrderedJson& text(std::string_view value);
  OrderedJson& raw(std::string_view value);  // a number, true or false
  std::string take();                        // ends with a newline

 private:
  void begin_value();
  void line();
  std::string out_;
  std::vector<char> open_;
  bool first_ = true, after_key_ = false;
};

}  // namespace gownsheaf
