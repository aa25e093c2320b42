#include "outline/pick.h"

#include <algorithm>
#include <cmath>

#include "diagnostics/message.h"
#include "outline/joined_lines.h"
#include "outline/numbers.h"
#include "units/print.h"

namespace gownsheaf {
namespace {

std::string mm_words(double mm) { return decimal(mm, mm < 10 ? 1 : 0); }
std::string spot_words(Point p) { return "(" + mm_words(p.x.in_mm()) + ", " + mm_words(p.y.in_mm()) + ")"; }

struct SizeAsked {
  double width, height;
  int nth = 0;
};  // nth: 0 = the only one

std::optional<SizeAsked> read_size(std::string_view text) {
  NumberScanner scan(trimmed(text));
  std::optional<double> first = scan.number();
  scan.skip_blanks();
  SizeAsked asked{0, 0, 0};
  std::string_view word = scan.letters();
  if (first && word == "of") {
    if (*first < 1 || *first > 100000 || *first != std::floor(*first)) return {};
    asked.nth = static_cast<int>(*first);
    scan.skip_blanks();
    first = scan.number();
    scan.skip_blanks();
    word = scan.letters();
  }
  if (!first || word != "x") return {};
  scan.skip_blanks();
  const std::optional<double> second = scan.number();
  scan.skip_blanks();
  const std::string_view unit = scan.letters();
  if (!second || !scan.done()) return {};
  const double mm = unit == "mm" ? 1 : unit == "cm" ? 10 : unit == "in" ? 25.4 : 0;
  if (mm == 0) return {};
  asked.width = *first * mm;
  asked.height = *second * mm;
  return asked;
}

bool has_size(const Box& box, double width, double height) {
  return std::fabs(box.width.in_mm() - width) <= kSameSizeMm && std::fabs(box.height.in_mm() - height) <= kSameSizeMm;
}

bool below_id(const DrawnAt& drawn, std::string_view id) {
  return std::find(drawn.within.begin(), drawn.within.end(), id) != drawn.within.end();
}

bool lies_in(const DrawnOutline& inner, const DrawnOutline& outer) {
  if (!contains(outer.box, inner.box)) return false;
  for (const Polygon& ring : inner.region.rings)
    for (const Point& p : ring)
      if (side_of(outer.region, p) == Side::outside) return false;
  return true;
}

class Picker {
 public:
  Picker(const SvgDrawing& drawing, const PickAsked& asked, Diagnostics& diag) : drawing_(drawing), asked_(asked), diag_(diag) {}

  std::optional<PickedOutline> pick() {
    std::optional<DrawnOutline> joined;
    const DrawnOutline* found = by_name();
    if (!found && !failed_) found = by_size();
    if (!found && !failed_) {
      joined = from_open_lines();
      if (joined) found = &*joined;
    }
    if (!found) {
      if (!failed_) unknown();
      return {};
    }
    return mended(*found);
  }

 private:
  std::string name() const { return "`" + std::string(asked_.which) + "`"; }
  void say(Severity severity, const char* code, std::string sentence, std::string hint) {
    diag_.add(message({}, severity, code, asked_.at, std::move(sentence), std::move(hint)));
    failed_ = failed_ || severity == Severity::error;
  }

  const DrawnOutline* one_of(const std::vector<const DrawnOutline*>& all) {
    if (all.empty()) return nullptr;
    const DrawnOutline* largest = all.front();
    for (const DrawnOutline* o : all)
      if (area(o->region) > area(largest->region)) largest = o;
    std::size_t same = 0, inner = 0;
    for (const DrawnOutline* o : all) {
      if (o->region == largest->region) ++same;
      else if (lies_in(*o, *largest)) ++inner;
    }
    if (same + inner < all.size()) {
      std::string sizes;
      for (std::size_t i = 0; i < std::min<std::size_t>(all.size(), 4); ++i) sizes += (i ? "; " : "") + size_words(all[i]->box);
      say(Severity::error, "outline-several",
          std::to_string(all.size()) + " outlines of " + drawing_.file + " answer to " + name() + ".",
          "one by its own id or its size: " + sizes);
      return nullptr;
    }
    if (same > 1)
      say(Severity::warning, "outline-doubled",
          name() + " is drawn " + std::to_string(same) + " times in one place; once is taken.", "");
    if (inner > 0)
      say(Severity::warning, "outline-outermost",
          name() + " holds " + std::to_string(inner + 1) + " outlines, one inside the other; the outermost is taken.",
          "name the one that is meant by its id");
    return largest;
  }

  const DrawnOutline* by_name() {
    std::vector<const DrawnOutline*> own, below;
    for (const DrawnOutline& o : drawing_.outlines) {
      if (o.drawn.id == asked_.which) own.push_back(&o);
      else if (below_id(o.drawn, asked_.which)) below.push_back(&o);
    }
    return one_of(own.empty() ? below : own);
  }

  const DrawnOutline* by_size() {
    const std::optional<SizeAsked> size = read_size(asked_.which);
    if (!size) return nullptr;
    std::vector<const DrawnOutline*> all;
    for (const DrawnOutline& o : drawing_.outlines)
      if (has_size(o.box, size->width, size->height)) all.push_back(&o);
    if (size->nth > 0) {
      if (all.size() >= static_cast<std::size_t>(size->nth)) return all[static_cast<std::size_t>(size->nth) - 1];
    } else if (all.size() > 1) {
      say(Severity::error, "outline-several", std::to_string(all.size()) + " outlines of " + drawing_.file + " have this size.",
          "`1 of " + std::string(asked_.which) + "`, in the order of the sheet");
    } else if (all.size() == 1) {
      return all.front();
    }
    if (!failed_)
      say(Severity::error, "outline-unknown",
          "The drawing " + drawing_.file + " has " + (all.empty() ? "no outline" : "only " + std::to_string(all.size())) +
              " of this size.",
          "`gownsheaf outlines " + drawing_.file + "` lists them");
    return nullptr;
  }

  // Lines that are open, alone or a group of them, whose ends meet.
  std::optional<DrawnOutline> from_open_lines() {
    std::vector<const OpenLine*> lines;
    for (const OpenLine& line : drawing_.open_lines) {
      const bool is_mark = std::any_of(drawing_.marks.begin(), drawing_.marks.end(),
                                       [&](const DrawnMark& m) { return m.drawn.at == line.drawn.at; });
      if (!is_mark && (line.drawn.id == asked_.which || below_id(line.drawn, asked_.which))) lines.push_back(&line);
    }
    if (lines.empty()) return {};
    const JoinedLines joined = join_lines(lines, kGapMm);
    if (!joined.closed) {
      say(Severity::error, "outline-open",
          name() + " stays open between " + spot_words(joined.from) + " and " + spot_words(joined.to) + " mm of the page (" +
              lines.front()->drawn.at.file.text() + ", line " + std::to_string(lines.front()->drawn.at.line) + ").",
          "close it in the drawing program: join the two ends");
      return {};
    }
    DrawnOutline made{lines.front()->drawn, "", {joined.ring}, FillRule::nonzero, {}, {}, 0, bounds(joined.ring)};
    Resolved found = resolve(made.lines, made.rule);
    made.region = std::move(found.region);
    made.crossings = std::move(found.crossings);
    if (made.region.rings.empty()) return {};
    say(Severity::warning, "outline-closed", name() + " is open by " + decimal(joined.gap_mm, 2) + " mm; it was closed.", "");
    return made;
  }

  void unknown() {
    std::vector<std::string> choices;
    for (const DrawnOutline& o : drawing_.outlines) {
      if (!o.drawn.id.empty()) choices.push_back(o.drawn.id);
      choices.insert(choices.end(), o.drawn.within.begin(), o.drawn.within.end());
    }
    const std::string near = did_you_mean(asked_.which, choices);
    say(Severity::error, "outline-unknown", "No outline of " + drawing_.file + " is called " + name() + ".",
        near.empty() ? "`gownsheaf outlines " + drawing_.file + "` lists them" : "did you mean `" + near + "`?");
  }

  std::optional<PickedOutline> mended(const DrawnOutline& found) {
    Int128 outer_sum = 0;
    const Polygon* edge = nullptr;
    std::size_t outers = 0;
    for (const Polygon& ring : found.region.rings) {
      const Area a = area(ring);
      if (a < Area()) continue;
      ++outers;
      outer_sum += a.in_square_ticks();
      if (!edge || a > area(*edge)) edge = &ring;
    }
    const double share = static_cast<double>(area(*edge).in_square_ticks()) / static_cast<double>(outer_sum);
    if (outers > 1 && share < 1 - kLoopShare) {
      if (found.crossings.empty())
        say(Severity::error, "outline-parts", name() + " is in " + std::to_string(outers) + " parts.",
            "a piece is one outline: name each part by itself");
      else
        say(Severity::error, "outline-crosses",
            name() + " crosses itself at " + spot_words(found.crossings.front()) +
                " mm of the page, and neither part is plainly the piece.",
            "mend it in the drawing program");
      return {};
    }
    if (outers > 1)
      say(Severity::warning, "outline-loop",
          name() + " crosses itself at " + spot_words(found.crossings.front()) + " mm of the page; the loop was left out.", "");
    if (found.box.width < kLeastPiece && found.box.height < kLeastPiece) {
      say(Severity::error, "outline-tiny", name() + " is " + size_words(found.box) + ": too small for a piece.",
          "is it the outline that is meant, and is the scale right?");
      return {};
    }
    PickedOutline out;
    out.drawn_at = found.drawn.at;
    out.edge = *edge;
    const Region piece{{*edge}};
    for (const Polygon& ring : found.region.rings)
      if (area(ring) < Area() && side_of(piece, ring.front()) != Side::outside) out.holes.push_back(ring);
    take_marks(found, piece, out);
    if (!found.title.empty()) out.title = found.title;
    else if (out.title.empty()) out.title = found.drawn.id;
    placed(out);
    return out;
  }

  // Marks whose middle lies in the piece or 3 mm beside it (a fold or a notch stands on the edge).
  void take_marks(const DrawnOutline& found, const Region& piece, PickedOutline& out) {
    for (const DrawnMark& mark : drawing_.marks) {
      if (mark.kind == MarkKind::test_square) continue;
      Point sum;
      for (const Point& p : mark.points) sum = {sum.x + p.x, sum.y + p.y};
      const auto n = static_cast<std::int64_t>(mark.points.size());
      const Point middle{sum.x.times(1, n), sum.y.times(1, n)};
      const Length reach = Length::mm(3);
      const Box& box = found.box;
      if (middle.x + reach < box.x || middle.y + reach < box.y || box.right() + reach < middle.x ||
          box.bottom() + reach < middle.y)
        continue;
      if (!reaches(piece, middle, reach)) continue;
      if (mark.kind == MarkKind::name && out.title.empty()) out.title = mark.words;
      out.marks.push_back({mark.kind, mark.points, mark.closed, mark.words});
    }
  }

  // The scale mended by the test square, and the box moved to 0, 0.
  void placed(PickedOutline& out) {
    const std::optional<TestSquare> square = test_square(drawing_);
    const Length should_be = square ? square->should_be : Length::mm(50);
    const Length measures = asked_.square_measures.value_or(should_be);
    const Box box = bounds(out.edge);
    const auto place = [&](Polygon& points) {
      for (Point& p : points)
        p = {(p.x - box.x).times(should_be.in_ticks(), measures.in_ticks()),
             (p.y - box.y).times(should_be.in_ticks(), measures.in_ticks())};
    };
    place(out.edge);
    for (Polygon& hole : out.holes) place(hole);
    for (PickedMark& mark : out.marks) place(mark.points);
  }

  const SvgDrawing& drawing_;
  const PickAsked& asked_;
  Diagnostics& diag_;
  bool failed_ = false;
};

}  // namespace

std::optional<PickedOutline> pick_outline(const SvgDrawing& drawing, const PickAsked& asked, Diagnostics& diag) {
  return Picker(drawing, asked, diag).pick();
}

std::string size_words(const Box& box) { return mm_words(box.width.in_mm()) + " x " + mm_words(box.height.in_mm()) + " mm"; }

std::string pick_words(const SvgDrawing& drawing, std::size_t outline) {
  const DrawnOutline& asked = drawing.outlines[outline];
  const auto called = std::count_if(drawing.outlines.begin(), drawing.outlines.end(),
                                    [&](const DrawnOutline& o) { return o.drawn.id == asked.drawn.id; });
  if (!asked.drawn.id.empty() && called == 1) return asked.drawn.id;
  const std::string size = size_words(asked.box);
  const std::optional<SizeAsked> read = read_size(size);
  int nth = 0, all = 0;
  for (std::size_t i = 0; i < drawing.outlines.size(); ++i) {
    if (!has_size(drawing.outlines[i].box, read->width, read->height)) continue;
    ++all;
    if (i <= outline) ++nth;
  }
  return all > 1 ? std::to_string(nth) + " of " + size : size;
}

std::optional<TestSquare> test_square(const SvgDrawing& drawing) {
  for (const DrawnMark& mark : drawing.marks) {
    if (mark.kind != MarkKind::test_square || !mark.closed) continue;
    const Box box = bounds(mark.points);
    TestSquare square{Length::mm(50), Length::ticks((box.width + box.height).in_ticks() / 2), mark.drawn.at};
    const std::string_view id = mark.drawn.id;
    if (const std::size_t dash = id.rfind('-'); dash != std::string_view::npos) {
      NumberScanner scan(id.substr(dash + 1));
      const std::optional<double> n = scan.number();
      const std::string_view unit = scan.letters();
      const double mm = unit == "mm" ? 1 : unit == "cm" ? 10 : unit == "in" ? 25.4 : 0;
      if (n && scan.done() && mm > 0 && *n * mm >= 1 && *n * mm <= 1000)
        square.should_be = Length::ticks(std::llround(*n * mm * Length::kPerMm));
    }
    return square;
  }
  return {};
}

void note_test_square(const SvgDrawing& drawing, Diagnostics& diag) {
  const std::optional<TestSquare> square = test_square(drawing);
  if (!square || std::fabs((square->reads - square->should_be).in_mm()) < 0.01) return;
  const std::string reads = decimal(square->reads.in_mm(), 2) + " mm";
  diag.add(message({}, Severity::warning, "square-off", square->at,
                   "The test square is " + reads + ", not " + decimal(square->should_be.in_mm(), 2) + " mm.",
                   "`square measures: " + reads + "` beside the outline mends the scale"));
}

}  // namespace gownsheaf
