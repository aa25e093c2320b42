#include "write/pdf_checks.h"

#include <charconv>

#include "unicode/utf8.h"
#include "units/print.h"
#include "write/face_names.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kFarthestTicks = std::int64_t{kFarthestPoints} * Length::kPerPoint;

std::string code_point(char32_t c) {  // "U+00BD"
  char digits[8];
  std::string hex(digits, std::to_chars(digits, digits + sizeof digits, static_cast<std::uint32_t>(c), 16).ptr);
  for (char& digit : hex) digit = digit >= 'a' ? static_cast<char>(digit - 'a' + 'A') : digit;
  return "U+" + std::string(hex.size() < 4 ? 4 - hex.size() : 0, '0') + hex;
}

bool far(Length length) { return length.in_ticks() > kFarthestTicks || length.in_ticks() < -kFarthestTicks; }
bool far(Point p) { return far(p.x) || far(p.y); }

bool is_utf8(std::string_view bytes, const std::vector<char32_t>& decoded) {
  std::string again;
  for (const char32_t c : decoded) again += encode_utf8(c);
  return again == bytes;
}

// Names and titles are shown by the viewer, not by a face of ours; PDF text strings hold them when libharu can encode
// them.
std::string why_no_title(const std::string& utf8) {
  if (utf8.size() > std::size_t{kLongestRun}) return "is longer than " + whole_number(kLongestRun) + " bytes";
  const std::vector<char32_t> characters = decode_utf8(utf8);
  if (!is_utf8(utf8, characters)) return "is not UTF-8";
  for (const char32_t c : characters) {
    if (c < 0x20 || (c >= 0x7F && c <= 0x9F) || c > 0xFFFF) return "holds " + code_point(c);
  }
  return "";
}

class Checker {
 public:
  explicit Checker(const FontSet& fonts) : fonts_(fonts) {}

  std::string why(const TextMark& text) const {
    if (far(text.at)) return "text lies too far from the page";
    if (text.angle != 0 && text.angle != 90) return "text is turned by other than 0 or 90 degrees";
    for (const TextRun& run : text.runs) {
      if (std::string why = why_run(run); !why.empty()) return "the words \"" + run.utf8 + "\": " + why;
    }
    return "";
  }
  std::string why(const StrokeMark& stroke) const {
    if (std::string why = why_path(stroke.path); !why.empty()) return "a line: " + why;
    if (stroke.weight <= Length() || far(stroke.weight)) return "a line has no weight that can be printed";
    if (stroke.dash.size() > 8 || stroke.dash.size() % 2 != 0) return "a dashed line needs 2, 4, 6 or 8 lengths";
    for (const int part : stroke.dash) {
      if (part < 1 || part > kLongestDashPoints) return "a dashed line has a length outside 1 to 100 points";
    }
    return "";
  }
  std::string why(const FillMark& fill) const {
    const std::string why = why_path(fill.path);
    return why.empty() ? "" : "a filled shape: " + why;
  }
  std::string why(const ClipMark& clip) {
    if (std::string why = why_path(clip.path); !why.empty()) return "a clip group: " + why;
    if (++clips_ > kClipsInside) return "more than " + whole_number(kClipsInside) + " clip groups lie inside each other";
    std::string why = why_any(clip.inside);
    --clips_;
    return why;
  }
  std::string why(const LinkMark& link) const {
    const bool flat = link.at.width <= Length() || link.at.height <= Length();
    if (flat || far(Point{link.at.x, link.at.y}) || far(Point{link.at.right(), link.at.bottom()})) {
      return "the link to \"" + link.anchor + "\" has no box on the page";
    }
    return "";
  }
  std::string why(const AnchorMark& anchor) const {
    return far(anchor.at) ? "the anchor \"" + anchor.name + "\" lies too far from the page" : "";
  }
  std::string why_any(const std::vector<Mark>& marks) {
    for (const Mark& mark : marks) {
      std::string found = std::visit([this](const auto& m) { return why(m); }, mark.what);
      if (!found.empty()) return found;
    }
    return "";
  }

 private:
  std::string why_run(const TextRun& run) const {
    if (run.size <= Length() || run.size > Length::points(kLargestTypePoints)) return "the size is outside 0 to 600 points";
    if (far(run.offset) || far(run.rise)) return "they lie too far from the page";
    if (run.utf8.size() > std::size_t{kLongestRun}) return "they are too long";
    if (fonts_.file(run.face).empty()) return "the face " + std::string(name_of(run.face)) + " has no font file";
    const std::vector<char32_t> characters = decode_utf8(run.utf8);
    if (!is_utf8(run.utf8, characters)) return "they are not UTF-8";
    for (const char32_t c : characters) {
      if (!fonts_.covers(run.face, c)) return "the face " + std::string(name_of(run.face)) + " lacks " + code_point(c);
    }
    return "";
  }
  // A path must begin with a move, and every part of it must have something to paint.
  static std::string why_path(const Path& path) {
    bool begun = false, drawn = false;
    for (const PathStep& step : path) {
      switch (step.kind) {
        case PathStep::Kind::move:
          if (begun && !drawn) return "a part of the path has nothing to paint";
          begun = true;
          drawn = false;
          break;
        case PathStep::Kind::curve:
          if (far(step.a) || far(step.b)) return "it lies too far from the page";
          [[fallthrough]];
        case PathStep::Kind::line:
        case PathStep::Kind::close:
          if (!begun) return "the path does not begin with a move";
          drawn = drawn || step.kind != PathStep::Kind::close;
          break;
      }
      if (step.kind != PathStep::Kind::close && far(step.to)) return "it lies too far from the page";
    }
    if (!drawn) return path.empty() ? "the path is empty" : "a part of the path has nothing to paint";
    return "";
  }

  const FontSet& fonts_;
  int clips_ = 0;
};

std::string why_no_facts(const PaperDocument& document) {
  const std::pair<const char*, const std::string*> facts[] = {
      {"title", &document.title}, {"subject", &document.subject}, {"made with", &document.made_with}};
  for (const auto& [name, text] : facts) {
    if (const std::string why = why_no_title(*text); !why.empty()) {
      return std::string("The document's ") + name + " " + why + ", which a PDF cannot show.";
    }
  }
  return "";
}

std::string why_no_bookmark(const PaperDocument& document) {
  for (const Bookmark& mark : document.bookmarks) {
    const auto name = "The bookmark \"" + mark.title + "\" ";
    if (mark.title.empty()) return "A bookmark has no title.";
    if (const std::string why = why_no_title(mark.title); !why.empty()) {
      return name + why + ", which a PDF cannot show.";
    }
    if (mark.page < 0 || static_cast<std::size_t>(mark.page) >= document.pages.size()) {
      return name + "leads to a page that does not exist.";
    }
    if (mark.level < 0 || far(mark.y)) return name + "has no place in the document.";
  }
  return "";
}

}  // namespace

std::string why_unprintable(const PaperDocument& document, const FontSet& fonts) {
  if (document.pages.empty()) return "The document has no pages.";
  if (std::string why = why_no_facts(document); !why.empty()) return why;
  if (std::string why = why_no_bookmark(document); !why.empty()) return why;
  Checker checker(fonts);
  for (std::size_t i = 0; i < document.pages.size(); ++i) {
    const Page& page = document.pages[i];
    std::string why;
    const Length least = Length::points(3), most = Length::points(kFarthestPoints);
    if (page.width < least || page.height < least || page.width > most || page.height > most) {
      why = "the paper is smaller than 3 points or larger than 14,400";
    }
    if (why.empty()) why = checker.why_any(page.marks);
    if (!why.empty()) return "Page " + whole_number(static_cast<std::int64_t>(i) + 1) + ": " + why + ".";
  }
  return "";
}

}  // namespace gownsheaf
