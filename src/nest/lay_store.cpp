#include "nest/lay_store.h"

#include <algorithm>
#include <charconv>
#include <cstring>
#include <map>
#include <tuple>

namespace gownsheaf::nest {
namespace {

void add(std::string& text, std::int64_t n) { text += std::to_string(n) + ' '; }
void add(std::string& text, Length l) { add(text, l.in_ticks()); }
void add(std::string& text, const std::optional<Length>& l) { text += l ? std::to_string(l->in_ticks()) + ' ' : "- "; }
void add(std::string& text, const std::optional<Part::Lattice>& l) {
  if (l) {
    add(text, l->step);
    add(text, l->phase);
  } else {
    text += "- ";
  }
}
void add(std::string& text, const Pose& pose) {
  add(text, pose.quarter_turns);
  add(text, pose.mirrored ? 1 : 0);
  add(text, pose.millidegrees);
}

// Whole numbers with a space after each.
class Numbers {
 public:
  explicit Numbers(std::string_view text) : text_(text) {}
  std::int64_t next() {
    std::int64_t n = 0;
    const auto [end, fault] = std::from_chars(text_.data(), text_.data() + text_.size(), n);
    sound_ = sound_ && fault == std::errc() && end != text_.data() + text_.size() && *end == ' ';
    if (!sound_) return 0;
    text_.remove_prefix(static_cast<std::size_t>(end - text_.data()) + 1);
    return n;
  }
  std::int64_t next(std::int64_t least, std::int64_t most) {
    const std::int64_t n = next();
    sound_ = sound_ && n >= least && n <= most;
    return sound_ ? n : least;
  }
  Length length() { return Length::ticks(next(-Length::kCap * 4, Length::kCap * 4)); }
  bool sound() const { return sound_; }
  bool at_end() const { return sound_ && text_.empty(); }

 private:
  std::string_view text_;
  bool sound_ = true;
};

}  // namespace

std::string key_of(const Request& request, const LayEffort& effort) {
  std::string text = "engine " + std::string(engine_mark()) + "\neffort ";
  add(text, effort.rectangles);
  add(text, effort.outlines);
  add(text, request.seed);
  add(text, request.gap);
  for (const Part& part : request.parts) {
    text += "\npart ";
    add(text, part.copies);
    add(text, part.fixed_y);
    add(text, part.lattice);
    add(text, part.lattice_across);
    add(text, part.clear_of_first_edge);
    text += "strips ";
    for (const int strip : part.strips) add(text, strip);
    text += "poses ";
    for (const Pose& pose : part.poses) add(text, pose);
    text += "outline ";
    for (const Point& p : part.outline) {
      add(text, p.x);
      add(text, p.y);
    }
  }
  for (const Strip& strip : request.strips) {
    text += "\nstrip ";
    add(text, strip.width);
    add(text, strip.length);
    std::uint64_t cost = 0;
    static_assert(sizeof cost == sizeof strip.cost);
    std::memcpy(&cost, &strip.cost, sizeof cost);
    text += std::to_string(cost) + " obstacles ";
    for (const Box& box : strip.obstacles)
      for (const Length l : {box.x, box.y, box.width, box.height}) add(text, l);
  }
  return text;
}

std::string text_of(const Lay& lay) {
  std::string text;
  add(text, static_cast<std::int64_t>(lay.placed.size()));
  for (const Placed& p : lay.placed) {
    for (const int n : {p.part, p.copy, p.strip}) add(text, n);
    add(text, p.pose);
    add(text, p.at.x);
    add(text, p.at.y);
  }
  add(text, static_cast<std::int64_t>(lay.left_out.size()));
  for (const auto& [part, copy] : lay.left_out) {
    add(text, part);
    add(text, copy);
  }
  add(text, static_cast<std::int64_t>(lay.used.size()));
  for (const Length used : lay.used) add(text, used);
  add(text, lay.bound);
  add(text, lay.proven ? 1 : 0);
  add(text, lay.work);
  return text + lay.unsupported;
}

std::optional<Lay> lay_of(std::string_view text, const Request& request) {
  const std::size_t words = std::min(text.find_first_not_of("0123456789- "), text.size());
  Lay lay;
  lay.unsupported = std::string(text.substr(words));
  Numbers numbers(text.substr(0, words));
  constexpr std::int64_t kMany = 10'000'000;
  std::map<std::pair<int, int>, int> seen;  // each copy of each part once
  const auto part_and_copy = [&] {
    const auto part = static_cast<int>(numbers.next(0, static_cast<std::int64_t>(request.parts.size()) - 1));
    const auto copy =
        static_cast<int>(numbers.next(0, numbers.sound() ? request.parts[static_cast<std::size_t>(part)].copies - 1 : 0));
    ++seen[{part, copy}];
    return std::pair(part, copy);
  };
  const std::int64_t placed = numbers.next(0, kMany);
  for (std::int64_t i = 0; i < placed && numbers.sound(); ++i) {
    Placed p;
    std::tie(p.part, p.copy) = part_and_copy();
    p.strip = static_cast<int>(numbers.next(0, static_cast<std::int64_t>(request.strips.size()) - 1));
    p.pose.quarter_turns = static_cast<int>(numbers.next(0, 3));
    p.pose.mirrored = numbers.next(0, 1) == 1;
    p.pose.millidegrees = static_cast<int>(numbers.next(0, 359'999));
    p.at.x = numbers.length();
    p.at.y = numbers.length();
    lay.placed.push_back(p);
  }
  const std::int64_t left = numbers.next(0, kMany);
  for (std::int64_t i = 0; i < left && numbers.sound(); ++i) lay.left_out.push_back(part_and_copy());
  const std::int64_t used = numbers.next(0, kMany);
  for (std::int64_t i = 0; i < used && numbers.sound(); ++i) lay.used.push_back(numbers.length());
  lay.bound = numbers.length();
  lay.proven = numbers.next(0, 1) == 1;
  lay.work = numbers.next();
  if (!numbers.at_end()) return std::nullopt;
  std::int64_t copies = 0;
  for (const Part& part : request.parts) copies += part.copies;
  const bool each_once = std::all_of(seen.begin(), seen.end(), [](const auto& one) { return one.second == 1; });
  const bool whole = each_once && static_cast<std::int64_t>(seen.size()) == copies && lay.used.size() == request.strips.size();
  if (lay.unsupported.empty() && !whole) return std::nullopt;
  return lay;
}

Lay lay_kept(const Request& request, const LayEffort& effort, LayStore* store) {
  if (store == nullptr || (effort.rectangles == 0 && effort.outlines == 0)) return lay_parts(request, effort);
  const std::string key = key_of(request, effort);
  if (const auto text = store->find(key))
    if (std::optional<Lay> lay = lay_of(*text, request)) {
      store->keep(key, *text);
      return *std::move(lay);
    }
  Lay lay = lay_parts(request, effort);
  if (!lay.cut_short) store->keep(key, text_of(lay));  // what was stopped can be had no second time
  return lay;
}

}  // namespace gownsheaf::nest
