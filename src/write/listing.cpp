// Pages as text, one line a mark, for tests and goldens. Lengths are points to 0.01, rounded from whole ticks by
// integers alone, so that a listing never changes with the machine.
#include <cstdint>

#include "units/print.h"
#include "write/face_names.h"
#include "write/write.h"

namespace gownsheaf {
namespace {

// Hundredths of a point, a tie away from zero; 1016 ticks to the point.
std::int64_t hundredths(Length length) {
  const Int128 scaled = static_cast<Int128>(length.in_ticks()) * 100;
  const Int128 half = Length::kPerPoint / 2;
  return static_cast<std::int64_t>((scaled >= 0 ? scaled + half : scaled - half) / Length::kPerPoint);
}

std::string point(Length length) {  // "76.00", "-0.50"
  const std::int64_t h = hundredths(length), size = h < 0 ? -h : h;
  const std::string part = whole_number(size % 100);
  return (h < 0 ? "-" : "") + whole_number(size / 100) + "." + (part.size() < 2 ? "0" : "") + part;
}

std::string type_size(Length length) {  // "28", "8.5"
  std::string text = point(length);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string place(Point p) { return point(p.x) + " " + point(p.y); }

std::string quoted(const std::string& utf8) {
  std::string text = "\"";
  for (const char c : utf8) {
    if (c == '"' || c == '\\') text += '\\';
    if (c == '\n') text += "\\n";
    else text += c;
  }
  return text + "\"";
}

std::string described(const Path& path) {
  std::string text;
  for (const PathStep& step : path) {
    switch (step.kind) {
      case PathStep::Kind::move: text += " from " + place(step.to); break;
      case PathStep::Kind::line: text += " to " + place(step.to); break;
      case PathStep::Kind::curve: text += " curve " + place(step.a) + " " + place(step.b) + " " + place(step.to); break;
      case PathStep::Kind::close: text += " close"; break;
    }
  }
  return text;
}

std::string word_for(Ink ink) {
  switch (ink) {
    case Ink::black: return "black";
    case Ink::mid_grey: return "mid-grey";
    case Ink::pale_grey: return "pale-grey";
    case Ink::white: return "white";
  }
  return "unknown";
}

class Listing {
 public:
  void line(const std::string& words) { text_ += std::string(indent_, ' ') + words + "\n"; }

  void marks(const std::vector<Mark>& marks) {
    indent_ += 2;
    for (const Mark& mark : marks) std::visit([this](const auto& m) { list(m); }, mark.what);
    indent_ -= 2;
  }

  std::string take() { return std::move(text_); }

 private:
  void list(const TextMark& text) {
    std::string words = "text " + place(text.at);
    if (text.angle != 0) words += " turned " + whole_number(text.angle);
    if (text.white) words += " white";
    bool first = true;
    for (const TextRun& run : text.runs) {
      if (!first) words += " |";
      if (!first || !run.offset.is_zero()) words += " at " + point(run.offset);
      if (!run.rise.is_zero()) words += " up " + point(run.rise);
      words += " " + std::string(name_of(run.face)) + " " + type_size(run.size) + " " + quoted(run.utf8);
      first = false;
    }
    line(words);
  }
  void list(const StrokeMark& stroke) {
    std::string words = "stroke " + point(stroke.weight);
    if (stroke.cap == Cap::round) words += " round-caps";
    if (stroke.join == Join::round) words += " round-joins";
    if (!stroke.dash.empty()) words += " dash";
    for (const int part : stroke.dash) words += " " + whole_number(part);
    line(words + described(stroke.path));
  }
  void list(const FillMark& fill) { line("fill " + word_for(fill.ink) + described(fill.path)); }
  void list(const ClipMark& clip) {
    line("clip" + described(clip.path));
    marks(clip.inside);
  }
  void list(const LinkMark& link) {
    line("link " + place({link.at.x, link.at.y}) + " size " + place({link.at.width, link.at.height}) + " " + quoted(link.anchor));
  }
  void list(const AnchorMark& anchor) { line("anchor " + place(anchor.at) + " " + quoted(anchor.name)); }

  std::string text_;
  std::size_t indent_ = 0;
};

}  // namespace

std::string page_listing(const PaperDocument& document) {
  Listing listing;
  listing.line("title " + quoted(document.title));
  if (!document.subject.empty()) listing.line("subject " + quoted(document.subject));
  if (document.print_scaling_none) listing.line("print scaling none");
  for (const Bookmark& mark : document.bookmarks) {
    listing.line("bookmark level " + whole_number(mark.level) + " page " + whole_number(mark.page + 1) + " " + point(mark.y) +
                 " " + quoted(mark.title));
  }
  for (std::size_t i = 0; i < document.pages.size(); ++i) {
    const Page& page = document.pages[i];
    listing.line("page " + whole_number(static_cast<std::int64_t>(i) + 1) + " " + place({page.width, page.height}));
    listing.marks(page.marks);
  }
  return listing.take();
}

}  // namespace gownsheaf
