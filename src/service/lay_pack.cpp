#include "service/lay_pack.h"

#include "files/files.h"
#include "service/fields.h"

namespace gownsheaf {
namespace {

const FieldLine kHead{"gownsheaf lays", "1"};

}  // namespace

LayPack::LayPack(std::string_view text) {
  const auto lines = lines_of_sealed(text);
  if (!lines || lines->front() != kHead) return;
  for (std::size_t i = 1; i < lines->size(); ++i)
    if ((*lines)[i].size() == 2) before_[(*lines)[i][0]] = (*lines)[i][1];
}

std::optional<std::string> LayPack::find(const std::string& key) {
  const std::string mark = sha256(key);
  for (const auto* kept : {&asked_, &before_})
    if (const auto at = kept->find(mark); at != kept->end()) {
      ++found_;
      return at->second;
    }
  return std::nullopt;
}

void LayPack::keep(const std::string& key, const std::string& lay) { asked_[sha256(key)] = lay; }

std::string LayPack::text() const {
  std::string text;
  add_line(text, kHead);
  for (const auto& [mark, lay] : asked_) add_line(text, {mark, lay});
  return sealed(std::move(text));
}

}  // namespace gownsheaf
