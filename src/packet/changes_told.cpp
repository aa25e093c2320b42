#include "packet/changes_told.h"

#include <algorithm>
#include <map>
#include <set>

#include "packet/wording.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kSeriesToldWhole = 4;

struct Place {
  std::string item, what, series;
  int number = 0;
};  // series: "mark" of `mark 3/fold`; "" when it is none

// "mark 3" -> "mark" and 3.
bool numbered(const std::string& part, Place& place) {
  const auto space = part.rfind(' ');
  if (space == std::string::npos || space + 1 == part.size() || part.size() - space > 6) return false;
  int n = 0;
  for (std::size_t i = space + 1; i < part.size(); ++i) {
    if (part[i] < '0' || part[i] > '9') return false;
    n = n * 10 + (part[i] - '0');
  }
  place.series = part.substr(0, space);
  place.number = n;
  return true;
}

Place place_of(const std::string& key) {
  const std::vector<std::string> p = parts_of_key(key);
  Place place;
  std::size_t first = 2;                  // of the quantity
  if (p.size() > 2 && p[0] == "steps") {  // an id may hold a stroke of its own
    place.item = "times of steps";
    for (std::size_t i = 1; i + 1 < p.size(); ++i) place.what += (i > 1 ? "/" : "") + p[i];
    return place;
  }
  if (p.size() < 3 || p[0] == "measures") {
    place.item = p[0] == "measures" ? "measures" : p[0];
    first = 1;
  } else if (p[0] == "pieces" && p.size() > 3) {
    place.item = p[1] + ", " + p[2];
    first = 3;
  } else {
    place.item = p[1];
  }
  for (std::size_t i = first; i < p.size(); ++i) place.what += (i > first ? ", " : "") + p[i];
  if (p[0] == "cloths" && place.what == "bound") place.what = "the least that any lay needs";
  if (first < p.size()) numbered(p[first], place);
  if (first < p.size() && p[first] == "lay") place.series = "places in the lay";
  return place;
}

std::vector<const Change*> shown(const Changes& changes, bool private_shown) {
  std::vector<const Change*> out;
  for (const Change& c : changes.all)
    if (private_shown || !c.is_private) out.push_back(&c);
  return out;
}

LengthText as_text(const Figure& f, ShownIn in) {
  if (std::holds_alternative<Length>(f.value)) return length_text(f, in);
  LengthText t;
  t.whole = plain_text(f, in);
  return t;
}

LengthText only_word(std::string word) {
  LengthText t;
  t.whole = std::move(word);
  return t;
}

ChangeLine line_of(const Change& c, const Place& place, ShownIn in) {
  ChangeLine line;
  line.item = place.item;
  line.what = place.what;
  line.now = c.is ? as_text(*c.is, in) : only_word("no more");
  line.was = c.was ? as_text(*c.was, in) : only_word("new");
  if (c.is && c.was && line.now.unit != line.was.unit) return line;  // yards beside inches: each says its own
  line.unit = c.is ? line.now.unit : line.was.unit;
  line.now.unit.clear();
  line.was.unit.clear();
  return line;
}

// "marks 1 to 18: see their sheet". Of a lay the places are not numbered.
std::string series_words(const std::string& series, const std::vector<int>& numbers) {
  if (series == "places in the lay") return series;
  return series + (numbers.size() > 1 ? "s " : " ") + ranges(numbers);
}

// Counted for the first sentence.
struct Counted {
  std::set<std::string> again, trim, resize, fresh, gone, marks, marked_items;
  std::vector<Text> buy;
};

std::string piece_of(const std::string& key) {  // "piece/cloth"
  const std::vector<std::string> p = parts_of_key(key);
  return p.size() > 3 && p[0] == "pieces" ? p[1] + "/" + p[2] : "";
}

void count_recut(const Change& c, Counted& n) {
  const std::string piece = piece_of(c.key);
  if (piece.empty()) return;  // of a whole cloth: its pieces are counted
  if (n.again.count(piece) + n.trim.count(piece) > 0) return;
  const bool whole = parts_of_key(c.key).back() == "copies";
  if (c.kind == Change::Kind::altered) n.resize.insert(piece);
  else if (whole) (c.kind == Change::Kind::is_new ? n.fresh : n.gone).insert(piece);
}

void count_remark(const Change& c, Counted& n) {
  const Place place = place_of(c.key);
  if (place.number > 0) n.marks.insert(place.item + "/" + place.series + "/" + whole_number(place.number));
  else n.marked_items.insert(place.item);
}

void count_buy(const Change& c, ShownIn in, Counted& n) {
  const std::vector<std::string> p = parts_of_key(c.key);
  if (p.size() < 2 || p.back() == "short") return;  // short is said on its own sheet
  if (c.kind == Change::Kind::is_new) return n.buy.push_back(words(p[1] + " to buy"));
  if (c.kind == Change::Kind::gone) return n.buy.push_back(words("no " + p[1] + " to buy"));
  if (std::holds_alternative<Length>(c.is->value) && std::holds_alternative<Length>(c.was->value)) {
    // As far apart as the two are printed.
    Figure by = *c.is;
    const Length step = in == ShownIn::inches ? Length::inches(36).times(1, 8) : Length::cm(1);
    const Length apart =
        std::get<Length>(c.is->value).to_step(step, Rounding::up) - std::get<Length>(c.was->value).to_step(step, Rounding::up);
    if (apart.is_zero()) return;
    by.value = apart > Length() ? apart : -apart;
    return n.buy.push_back(gownsheaf::measured(length_text(by, in)) + words((apart > Length() ? " more " : " less ") + p[1]));
  }
  if (std::holds_alternative<std::int64_t>(c.is->value) && std::holds_alternative<std::int64_t>(c.was->value)) {
    const std::int64_t apart = std::get<std::int64_t>(c.is->value) - std::get<std::int64_t>(c.was->value);
    return n.buy.push_back(words(whole_number(apart > 0 ? apart : -apart) + (apart > 0 ? " more " : " fewer ") + p[1]));
  }
  n.buy.push_back(words("another amount of " + p[1]));
}

}  // namespace

std::vector<ChangeLine> change_lines(const Changes& changes, Action action, ShownIn shown_in, bool private_shown) {
  std::map<std::string, std::vector<int>> series;  // item and series -> the numbers that changed
  std::vector<const Change*> wanted;
  for (const Change* c : shown(changes, private_shown)) {
    if (c->action != action) continue;
    wanted.push_back(c);
    const Place place = place_of(c->key);
    if (place.series.empty()) continue;
    std::vector<int>& numbers = series[place.item + "/" + place.series];
    if (std::find(numbers.begin(), numbers.end(), place.number) == numbers.end()) numbers.push_back(place.number);
  }
  std::vector<ChangeLine> lines;
  std::set<std::string> told;
  for (const Change* c : wanted) {
    const Place place = place_of(c->key);
    const std::string name = place.item + "/" + place.series;
    const bool lay = place.series == "places in the lay";
    const bool long_series = !place.series.empty() && (lay || series[name].size() > kSeriesToldWhole);
    ChangeLine line;
    if (long_series) {
      if (!told.insert(name).second) continue;
      std::vector<int>& numbers = series[name];
      std::sort(numbers.begin(), numbers.end());
      line.item = place.item;
      line.what = series_words(place.series, numbers) + ": see their sheet";
    } else {
      line = line_of(*c, place, shown_in);
    }
    auto at = std::find_if(lines.rbegin(), lines.rend(), [&](const ChangeLine& l) { return l.item == line.item; });
    lines.insert(at == lines.rend() ? lines.end() : at.base(), std::move(line));
  }
  return lines;
}

Text changes_answer(const Changes& changes, ShownIn shown_in, bool private_shown) {
  const std::vector<const Change*> all = shown(changes, private_shown);
  if (all.empty()) return words("Nothing changed.");
  Counted n;
  for (const CutAlready& cut : changes.cut) {
    if (cut.is_private && !private_shown) continue;
    const std::string piece = cut.piece + "/" + cut.cloth;
    if (cut.kind == CutAlready::Kind::too_small || cut.kind == CutAlready::Kind::wanted_more) n.again.insert(piece);
    else if (cut.kind == CutAlready::Kind::too_large) n.trim.insert(piece);
  }
  for (const std::string& piece : n.again) n.trim.erase(piece);
  for (const Change* c : all) {
    if (c->action == Action::recut) count_recut(*c, n);
    else if (c->action == Action::remark) count_remark(*c, n);
    else if (c->action == Action::buy) count_buy(*c, shown_in, n);
  }
  std::vector<Text> said;
  const auto say = [&](const std::set<std::string>& which, const char* one, const char* many) {
    if (!which.empty()) said.push_back(words(counted(static_cast<std::int64_t>(which.size()), one, many)));
  };
  say(n.again, "piece to cut again", "pieces to cut again");
  say(n.trim, "cut piece to trim", "cut pieces to trim");
  say(n.resize, "piece to cut to another size", "pieces to cut to another size");
  say(n.fresh, "new piece to cut", "new pieces to cut");
  say(n.gone, "piece no more cut", "pieces no more cut");
  say(n.marks, "mark to move", "marks to move");
  if (n.marks.empty()) say(n.marked_items, "thing to mark anew", "things to mark anew");
  for (const Text& t : n.buy) said.push_back(t);
  if (said.empty()) {
    const auto many = static_cast<std::int64_t>(all.size());
    return words(counted(many, "figure is another now", "figures are others now") + "; nothing is to be done for " +
                 (many == 1 ? "it." : "them."));
  }
  Text out;
  for (std::size_t i = 0; i < said.size(); ++i) out = out + (i > 0 ? words(", ") : Text{}) + said[i];
  return out + words("; all else stands.");
}

}  // namespace gownsheaf
