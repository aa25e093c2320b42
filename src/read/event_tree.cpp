// The only file that includes yaml-cpp.
#include "read/event_tree.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <sstream>
#include <unordered_map>
#include <utility>

#include "read/findings.h"

namespace gownsheaf {
namespace {

struct Stopped {};  // thrown after a message that ends the reading

class Gatherer final : public YAML::EventHandler {
 public:
  Gatherer(const SourceLines& lines, const ReadLimits& limits, std::size_t quiet_from, Diagnostics& diag)
      : lines_(lines), limits_(limits), quiet_from_(quiet_from), diag_(diag) {}

  Entry root;
  bool done = false, spoiled = false;
  std::optional<Place> last_value;

  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    refuse_shorthand(mark, "", anchor);
    const Place p = place(mark);
    const std::string_view rest = rest_of_line(p);
    for (const std::string_view spelling : {"~", "null", "Null", "NULL"}) {
      if (!rest.starts_with(spelling) || !stands_alone(rest, spelling.size()) || !is_written(p)) continue;
      Entry entry;
      entry.kind = Entry::Kind::text;
      entry.text = spelling;
      entry.at = lines_.span(p, spelling.size());
      return put(std::move(entry), p, spelling.size());
    }
    Entry nothing;
    if (frames_.empty()) {
      nothing.at = lines_.span(p, 1);
    } else if (frames_.back().entry.kind == Entry::Kind::list) {
      nothing.at = lines_.span(dash_before(p), 1);
    } else if (frames_.back().has_key) {
      nothing.at = frames_.back().key_at;
      if (frames_.back().in_brackets) colon_in_brackets(frames_.back());
    } else {
      fault("yaml-form", p, 1, "No word stands before this colon.", "write the key first: `waist: 26 in`");
      throw Stopped{};
    }
    put(std::move(nothing), p, 1);
  }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override { refuse_shorthand(mark, "", 1); }

  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, const std::string& v) override {
    refuse_shorthand(mark, tag, anchor);
    const Place p = place(mark);
    last_value = p;
    Entry entry;
    entry.kind = Entry::Kind::text;
    entry.text = v;
    entry.quoted = tag == "!";
    const char sign = rest_of_line(p).empty() ? ' ' : rest_of_line(p)[0];
    if (entry.quoted && (sign == '|' || sign == '>'))
      while (!entry.text.empty() && entry.text.back() == '\n') entry.text.pop_back();
    const std::size_t length = written_length(p, entry);
    entry.at = lines_.span(p, length);
    put(std::move(entry), p, length);
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value style) override {
    begin(Entry::Kind::list, mark, tag, anchor, style);
  }
  void OnSequenceEnd() override { end(); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value style) override {
    begin(Entry::Kind::block, mark, tag, anchor, style);
  }
  void OnMapEnd() override { end(); }

  void fault(const std::string& code, Place at, std::size_t bytes, std::string sentence, std::string hint = "") {
    spoiled = true;
    if (at.line >= quiet_from_ || ++told_ > 50) return;
    diag_.error(code, lines_.span(at, bytes), std::move(sentence), std::move(hint));
  }

  Place place(const YAML::Mark& mark) const {
    const Place p{static_cast<std::size_t>(std::max(mark.line, 0)), static_cast<std::size_t>(std::max(mark.column, 0))};
    return p.line < lines_.count() ? p : Place{lines_.count() - 1, lines_.line(lines_.count() - 1).size()};
  }

 private:
  struct Frame {
    Entry entry;
    std::size_t column = 0;  // of its keys or dashes
    bool in_brackets = false, has_key = false;
    bool repeated = false;  // its key stands above already
    std::string key;
    SourceSpan key_at;
    Place key_place;
    std::size_t key_length = 0;
    std::unordered_map<std::string, SourceSpan> seen;
  };

  std::string_view rest_of_line(Place p) const {
    const std::string_view line = lines_.line(p.line);
    return line.substr(std::min(p.column, line.size()));
  }

  static bool stands_alone(std::string_view rest, std::size_t length) {
    return length == rest.size() || is_blank(rest[length]) || std::string_view(",]}:").find(rest[length]) != rest.npos;
  }

  // For a value that is absent the parser gives the place of whatever comes next, which may itself be spelled `null`.
  bool is_written(Place p) const {
    if (frames_.empty()) return true;
    const Frame& f = frames_.back();
    if (f.in_brackets || (f.entry.kind == Entry::Kind::block && !f.has_key)) return true;
    return p.column > f.column || (f.has_key && f.key_place.line == p.line);
  }

  Place dash_before(Place p) const {
    for (std::size_t i = p.line + 1; i-- > 0;) {
      const std::string_view line = lines_.line(i);
      std::size_t at = next_text(line, 0);
      if (at == line.size() || (i == p.line && at >= p.column)) continue;
      std::size_t dash = at;
      while (begins_item(line, at) && (i < p.line || at < p.column)) {
        dash = at;
        at = next_text(line, at + 1);
      }
      return {i, dash};
    }
    return p;
  }

  std::size_t written_length(Place p, const Entry& entry) const {
    const std::string_view rest = rest_of_line(p);
    std::size_t length = entry.text.size();
    if (entry.quoted && !rest.empty() && (rest[0] == '"' || rest[0] == '\'')) {
      const std::size_t close = closing_mark(rest.substr(0, length * 10 + 2), 0);
      length = close == rest.npos ? rest.size() : close + 1;
    } else if (entry.quoted) {
      length = 1;
    } else if (rest.substr(0, length) != entry.text) {  // it runs on over more lines
      length = rest.size();
    }
    length = std::min(length, rest.size());
    while (length > 1 && is_blank(rest[length - 1])) --length;
    return length;
  }

  // Marks the first look did not see because they follow another fault.
  void refuse_shorthand(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
    if (anchor == YAML::NullAnchor && (tag.empty() || tag == "?" || tag == "!")) return;
    const Place p = place(mark);
    fault("shorthand", p, 1, "Here stands YAML shorthand, which is not read.", "write it out");
    throw Stopped{};
  }

  // `{ a: 1, mostly }`: an entry without a colon.
  void colon_in_brackets(const Frame& f) {
    const std::string_view line = lines_.line(f.key_place.line);
    const std::size_t after = next_text(line, f.key_place.column + f.key_length);
    if (after < line.size() && line[after] == ':') return;
    const std::string_view before = line.substr(0, f.key_place.column);
    const std::size_t sign = before.find_last_not_of(" \t");
    const std::size_t colon = f.key.find(':');
    const bool figure = f.key.find_first_of("0123456789") != f.key.npos;
    // `lap: 2,5 cm`: the comma that touches two figures was meant as a point.
    const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
    if (before.size() > 1 && before.back() == ',' && is_digit(before[before.size() - 2]) && !f.key.empty() &&
        is_digit(f.key[0])) {
      std::size_t from = before.size() - 1;
      while (from > 0 && is_digit(before[from - 1])) --from;
      const std::string whole(before.substr(from, before.size() - 1 - from));
      fault("decimal-comma", {f.key_place.line, from}, whole.size(), named(whole + "," + f.key) + ": a comma parts two items.",
            named(whole + "." + f.key));
      return;
    }
    if (colon != f.key.npos && colon > 0) {
      fault("no-space", f.key_place, f.key_length, named(f.key) + " is one word without a space after the colon.",
            named(f.key.substr(0, colon) + ": " + f.key.substr(colon + 1)));
    } else if (figure || (sign != before.npos && before[sign] == '{')) {
      fault("no-colon", f.key_place, f.key_length, named(f.key) + " has no colon.", "each entry inside { } is `word: value`");
    } else {
      fault("comma-split", f.key_place, f.key_length, named(f.key) + " stands alone: the comma before it ended the text.",
            "put the text in quotes");
    }
  }

  void begin(Entry::Kind kind, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
             YAML::EmitterStyle::value style) {
    refuse_shorthand(mark, tag, anchor);
    const Place p = place(mark);
    if (!frames_.empty() && frames_.back().entry.kind == Entry::Kind::block && !frames_.back().has_key) {
      fault("yaml-form", p, 1, "A list or block cannot be a key.", "a key is a word or two: `waist: 26 in`");
      throw Stopped{};
    }
    if (frames_.size() >= static_cast<std::size_t>(limits_.depth)) {
      fault("too-deep", p, 1, "Lists and blocks stand more than " + std::to_string(limits_.depth) + " deep here.",
            "no project needs so many; is a bracket missing?");
      throw Stopped{};
    }
    count(p);
    Frame frame;
    frame.entry.kind = kind;
    frame.column = p.column;
    frame.in_brackets = style == YAML::EmitterStyle::Flow;
    frame.entry.at = lines_.span(p, 1);
    frames_.push_back(std::move(frame));
  }

  void end() {
    Frame frame = std::move(frames_.back());
    frames_.pop_back();
    // The narrowest place for a block is its first key; for one in brackets, its bracket.
    if (!frame.in_brackets && frame.entry.kind == Entry::Kind::block && !frame.entry.children.empty())
      frame.entry.at = frame.entry.children.front().key_at;
    add(std::move(frame.entry));
  }

  void count(Place p) {
    if (frames_.empty()) return;  // the root is no entry
    if (++entries_ <= limits_.entries) return;
    fault("too-many-entries", p, 1, "The file holds more than " + std::to_string(limits_.entries) + " entries.",
          "split it into several projects");
    throw Stopped{};
  }

  void put(Entry entry, Place p, std::size_t length) {
    if (!frames_.empty() && frames_.back().entry.kind == Entry::Kind::block && !frames_.back().has_key) {
      key(entry, p, length);
    } else {
      count(p);
      add(std::move(entry));
    }
  }

  void key(const Entry& entry, Place p, std::size_t length) {
    Frame& f = frames_.back();
    f.key = entry.text;
    f.key_at = entry.at;
    f.key_place = p;
    f.key_length = length;
    f.has_key = true;
    if (entry.text == "<<" && !entry.quoted) {
      fault("shorthand", p, 2, "`<<` is YAML shorthand, which is not read here.", "write the entries out");
    }
    const auto [first, is_new] = f.seen.emplace(entry.text, entry.at);
    if (is_new) return;
    f.repeated = true;
    if (++repeats_ > 50) return;
    Diagnostic d;
    d.code = "key-twice";
    d.at = entry.at;
    d.also.push_back(first->second);
    const std::string line = std::to_string(first->second.line);
    d.sentence = named(entry.text) +
                 (first->second.line == entry.at.line ? " is given twice on line " : " is given here and on line ") + line + ".";
    d.hint = "keep one";
    diag_.add(std::move(d));
  }

  void add(Entry entry) {
    if (frames_.empty()) {
      root = std::move(entry);
      done = true;
      return;
    }
    Frame& f = frames_.back();
    if (f.entry.kind == Entry::Kind::block) {
      entry.key = std::move(f.key);
      entry.key_at = f.key_at;
      f.has_key = false;
      if (std::exchange(f.repeated, false)) return;
    }
    f.entry.children.push_back(std::move(entry));
  }

  const SourceLines& lines_;
  const ReadLimits& limits_;
  std::size_t quiet_from_;
  Diagnostics& diag_;
  std::vector<Frame> frames_;
  std::size_t entries_ = 0, repeats_ = 0, told_ = 0;
};

// The parser's own words, never printed alone, and what they mean to a maker.
void translate(const YAML::Exception& e, Gatherer& gatherer) {
  const std::string_view words = e.msg;
  const Place p = gatherer.place(e.mark);
  std::string last;
  if (gatherer.last_value) last = "; the value before it begins on line " + std::to_string(gatherer.last_value->line + 1);
  if (words.starts_with("unknown escape character")) {
    gatherer.fault("yaml-form", p, 1, "Inside \"…\" a backslash begins a sign of YAML's own, and this is none.",
                   "use '…' around text that holds a backslash");
  } else if (words == "bad file") {
    gatherer.fault("too-deep", p, 1, "Lists and blocks stand too deep here.", "is a bracket missing?");
  } else if (words.find("map value") != words.npos) {
    gatherer.fault("yaml-form", p, 1, "A colon stands where no key can" + last + ".",
                   "put text that holds a colon in quotes, and line keys up");
  } else if (words.find("tab") != words.npos) {
    gatherer.fault("tab-indent", p, 1, "Line " + std::to_string(p.line + 1) + " is indented with a tab.",
                   "use spaces, two for each step in");
  } else {
    gatherer.fault("yaml-form", p, 1, "The file cannot be read on from here as keys and values" + last + ".",
                   "look for a bracket, quotation mark or colon too many or missing, or a line set in wrongly");
  }
}

}  // namespace

Gathered gather(const std::string& mended, const SourceLines& lines, std::size_t quiet_from, const ReadLimits& limits,
                Diagnostics& diag) {
  Gatherer gatherer(lines, limits, quiet_from, diag);
  // yaml-cpp takes a quotation that is never closed, or a last line without a colon, in silence; with this ending it
  // refuses both, and a good file reads as before.
  std::istringstream in(mended + "\n#\n...\n");
  try {
    YAML::Parser parser(in);
    parser.HandleNextDocument(gatherer);
    if (gatherer.done) {
      Diagnostics unheard;
      Gatherer rest(lines, limits, 0, unheard);
      if (parser.HandleNextDocument(rest)) {
        const Place p = rest.last_value.value_or(Place{lines.count() - 1, 0});
        gatherer.fault("second-project", p, 1, "What stands here is no longer part of the project above.",
                       "look for a line set in wrongly; several projects are several files");
      }
    }
  } catch (const Stopped&) {
    gatherer.spoiled = true;
  } catch (const YAML::Exception& e) {
    gatherer.spoiled = true;
    translate(e, gatherer);
  }
  return {std::move(gatherer.root), gatherer.done && !gatherer.spoiled};
}

}  // namespace gownsheaf
