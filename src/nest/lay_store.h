// Lays kept from one run to the next, for whoever makes many: with a store every lay is what it is without. A lay is kept under all
// that it depends on, written out: the request, the effort, and the marks of the sources and the compiler that made the engine.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "nest/nest.h"

namespace gownsheaf::nest {

class LayStore {
 public:
  virtual ~LayStore() = default;
  virtual std::optional<std::string> find(const std::string& key) = 0;
  virtual void keep(const std::string& key, const std::string& lay) = 0;
};

// As lay_parts. A text that is no lay of this request is not taken.
Lay lay_kept(const Request& request, const LayEffort& effort, LayStore* store);

std::string_view engine_mark();  // made when the program is built: src/setup/engine_mark.cmake
std::string key_of(const Request& request, const LayEffort& effort);
std::string text_of(const Lay& lay);
std::optional<Lay> lay_of(std::string_view text, const Request& request);

}  // namespace gownsheaf::nest
