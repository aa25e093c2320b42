// Pages to PDF through libharu; the only file that includes hpdf.h. Compiles with 2.3.0 (Debian 12) and with 2.4.x.
//
// libharu is C with sticky errors: after one bad call all later calls fail. The callback records the first error, with
// what was being drawn, and `Pdf::check` turns it into a Refusal; nothing is thrown through libharu itself. What
// libharu accepts but prints wrong is refused before, in pdf_checks.
#include <hpdf.h>

#include <algorithm>
#include <map>
#include <type_traits>
#include <vector>

#include "units/print.h"
#include "write/pdf_checks.h"
#include "write/write.h"

namespace gownsheaf {
namespace {

// The types of dash lengths changed from whole numbers (2.3) to reals (2.4).
template <class>
struct DashSignature;
template <class Element, class Phase>
struct DashSignature<HPDF_STATUS(HPDF_Page, const Element*, HPDF_UINT, Phase)> {
  using element = Element;
  using phase = Phase;
};
using Dash = DashSignature<std::remove_pointer_t<decltype(&HPDF_Page_SetDash)>>;

struct Refusal {
  std::string sentence;
};

struct Doing {  // what libharu is being asked for; plain data, because the callback is called from C
  const char* what = "the document was begun";
  std::size_t page = 0;  // from 1; 0 = none
  HPDF_STATUS code = 0, detail = 0;
  const char* failed = "";
  std::size_t failed_page = 0;
};

void record(HPDF_STATUS code, HPDF_STATUS detail, void* user_data) {
  auto& doing = *static_cast<Doing*>(user_data);
  if (doing.code != 0) return;  // later errors only repeat the first
  doing.code = code;
  doing.detail = detail;
  doing.failed = doing.what;
  doing.failed_page = doing.page;
}

std::string counted(std::uint64_t n) { return whole_number(static_cast<std::int64_t>(n)); }

float points(Length length) { return static_cast<float>(length.in_points()); }

// The document, its fonts and its places. Every step ends in check().
class Pdf {
 public:
  Pdf(const PaperDocument& document, const FontSet& fonts) : document_(document), fonts_(fonts) {
    doc_ = HPDF_New(record, &doing_);
    if (doc_ == nullptr) throw Refusal{"libharu could not begin a document."};
  }
  Pdf(const Pdf&) = delete;
  Pdf& operator=(const Pdf&) = delete;
  ~Pdf() {
    if (doc_ != nullptr) HPDF_Free(doc_);
  }

  void now(const char* what, std::size_t page = 0) {
    doing_.what = what;
    doing_.page = page;
  }
  void check() const {
    if (doing_.code == 0) return;
    const std::string page = doing_.failed_page == 0 ? "" : " on page " + counted(doing_.failed_page);
    throw Refusal{"libharu refused while " + std::string(doing_.failed) + page + ": error " + counted(doing_.code) + ", detail " +
                  counted(doing_.detail) + "."};
  }

  void set_facts();
  void add_pages();
  void add_bookmarks();
  HPDF_Page page(std::size_t i) const { return pages_[i]; }
  HPDF_Font font(Face face);                          // opened on first use
  HPDF_Destination place(const std::string& anchor);  // nullptr when no anchor has the name
  std::string bytes();

 private:
  void find_anchors(const std::vector<Mark>& marks, std::size_t page);
  HPDF_Destination destination(std::size_t page, Length x, Length y);

  struct Anchor {
    std::size_t page;
    Point at;
  };
  const PaperDocument& document_;
  const FontSet& fonts_;
  Doing doing_;
  HPDF_Doc doc_ = nullptr;
  std::vector<HPDF_Page> pages_;
  std::map<Face, HPDF_Font> opened_;
  std::map<std::string, Anchor> anchors_;
  std::map<std::string, HPDF_Destination> places_;
};

void Pdf::set_facts() {
  now("the document's facts were set");
  HPDF_SetCompressionMode(doc_, HPDF_COMP_ALL);
  HPDF_UseUTFEncodings(doc_);
  HPDF_SetCurrentEncoder(doc_, "UTF-8");  // without it the facts are stored as bytes, and é is shown as two letters
  const std::pair<HPDF_InfoType, const std::string*> facts[] = {
      {HPDF_INFO_TITLE, &document_.title}, {HPDF_INFO_SUBJECT, &document_.subject}, {HPDF_INFO_KEYWORDS, &document_.made_with}};
  for (const auto& [kind, text] : facts) {
    if (!text->empty()) HPDF_SetInfoAttr(doc_, kind, text->c_str());
  }
  if (document_.print_scaling_none) HPDF_SetViewerPreference(doc_, HPDF_PRINT_SCALING_NONE);
  // The packet's words are English; libharu has no call that says so to a screen reader.
  if (HPDF_Dict_Add(doc_->catalog, "Lang", HPDF_String_New(doc_->mmgr, "en", nullptr)) != HPDF_OK) {
    throw Refusal{"libharu could not note the document's language."};
  }
  check();
}

void Pdf::add_pages() {
  for (std::size_t i = 0; i < document_.pages.size(); ++i) {
    now("a page was added", i + 1);
    const HPDF_Page page = HPDF_AddPage(doc_);
    if (page == nullptr) {
      check();
      throw Refusal{"libharu could not add page " + counted(i + 1) + "."};
    }
    HPDF_Page_SetWidth(page, points(document_.pages[i].width));
    HPDF_Page_SetHeight(page, points(document_.pages[i].height));
    pages_.push_back(page);
    find_anchors(document_.pages[i].marks, i);
  }
  check();
}

void Pdf::find_anchors(const std::vector<Mark>& marks, std::size_t page) {
  for (const Mark& mark : marks) {
    if (const auto* anchor = std::get_if<AnchorMark>(&mark.what)) anchors_.try_emplace(anchor->name, Anchor{page, anchor->at});
    if (const auto* clip = std::get_if<ClipMark>(&mark.what)) find_anchors(clip->inside, page);
  }
}

HPDF_Destination Pdf::destination(std::size_t page, Length x, Length y) {
  const Page& paper = document_.pages[page];
  const HPDF_Destination made = HPDF_Page_CreateDestination(pages_[page]);
  // libharu refuses places below or left of the page, and zoom 0, "leave as it is". A viewer shows the nearest place
  // that is on the page in any case.
  HPDF_Destination_SetXYZ(made, points(std::clamp(x, Length(), paper.width)),
                          points(paper.height - std::clamp(y, Length(), paper.height)), 1);
  return made;
}

HPDF_Destination Pdf::place(const std::string& anchor) {
  if (const auto made = places_.find(anchor); made != places_.end()) return made->second;
  const auto found = anchors_.find(anchor);
  if (found == anchors_.end()) return nullptr;
  const Anchor& at = found->second;
  return places_[anchor] = destination(at.page, at.at.x, at.at.y);
}

HPDF_Font Pdf::font(Face face) {
  HPDF_Font& opened = opened_[face];
  if (opened != nullptr) return opened;
  const std::string path = fonts_.file(face);
  const char* name = HPDF_LoadTTFontFromFile(doc_, path.c_str(), HPDF_TRUE);
  if (name != nullptr) opened = HPDF_GetFont(doc_, name, "UTF-8");
  // For a file that was cut short libharu gives neither a font nor an error.
  if (opened == nullptr) throw Refusal{"libharu could not open the font file " + path + "."};
  if (!fonts_.file_unchanged(face)) throw Refusal{"The font file " + path + " changed while the packet was made."};
  return opened;
}

void Pdf::add_bookmarks() {
  if (document_.bookmarks.empty()) return;
  now("the bookmarks were made");
  const HPDF_Encoder encoder = HPDF_GetEncoder(doc_, "UTF-8");
  check();
  std::vector<std::pair<int, HPDF_Outline>> above;  // the bookmarks that a deeper one may hang from, by level
  for (const Bookmark& mark : document_.bookmarks) {
    while (!above.empty() && above.back().first >= mark.level) above.pop_back();
    const HPDF_Outline parent = above.empty() ? nullptr : above.back().second;
    const HPDF_Outline made = HPDF_CreateOutline(doc_, parent, mark.title.c_str(), encoder);
    check();
    HPDF_Outline_SetDestination(made, destination(static_cast<std::size_t>(mark.page), Length(), mark.y));
    above.emplace_back(mark.level, made);
  }
  check();
}

std::string Pdf::bytes() {
  now("the file was put together");
  check();
  HPDF_SaveToStream(doc_);
  check();
  HPDF_UINT32 size = HPDF_GetStreamSize(doc_);
  std::string all(size, '\0');
  HPDF_ReadFromStream(doc_, reinterpret_cast<HPDF_BYTE*>(all.data()), &size);
  check();
  if (size == 0 || size != all.size()) throw Refusal{"libharu returned only part of the file."};
  return all;
}

// Draws one page. y counts down on our pages and up in PDF; the turn is made here and nowhere else.
class PageInk {
 public:
  PageInk(Pdf& pdf, const Page& paper, std::size_t index)
      : pdf_(pdf), page_(pdf.page(index)), height_(paper.height), number_(index + 1) {}

  void draw(const std::vector<Mark>& marks) {
    for (const Mark& mark : marks) std::visit([this](const auto& m) { draw(m); }, mark.what);
  }

 private:
  struct Pen {  // what libharu has been told, so that it is not told again for every mark; PDF's own defaults
    float grey = 0, weight = 1, size = 0;
    Cap cap = Cap::butt;
    Join join = Join::mitre;
    std::vector<int> dash;
    HPDF_Font font = nullptr;
  };

  float up(Length y) const { return points(height_ - y); }

  void fill_with(float grey) {
    if (grey != pen_.grey) HPDF_Page_SetGrayFill(page_, grey);
    pen_.grey = grey;
  }

  void draw(const TextMark& text) {
    pdf_.now("words were drawn", number_);
    fill_with(text.white ? 1.0F : 0.0F);
    HPDF_Page_BeginText(page_);
    for (const TextRun& run : text.runs) {
      if (run.utf8.empty()) continue;
      const HPDF_Font font = pdf_.font(run.face);
      const float size = points(run.size);
      if (font != pen_.font || size != pen_.size) HPDF_Page_SetFontAndSize(page_, font, size);
      pen_.font = font;
      pen_.size = size;
      if (text.angle == 90) {  // along the line is up the page, above the line is to the left
        HPDF_Page_SetTextMatrix(page_, 0, 1, -1, 0, points(text.at.x - run.rise), up(text.at.y - run.offset));
      } else {
        HPDF_Page_SetTextMatrix(page_, 1, 0, 0, 1, points(text.at.x + run.offset), up(text.at.y - run.rise));
      }
      HPDF_Page_ShowText(page_, run.utf8.c_str());
    }
    HPDF_Page_EndText(page_);
  }

  void draw(const StrokeMark& stroke) {
    pdf_.now("a line was drawn", number_);
    const float weight = points(stroke.weight);
    if (weight != pen_.weight) HPDF_Page_SetLineWidth(page_, weight);
    if (stroke.cap != pen_.cap) {
      HPDF_Page_SetLineCap(page_, stroke.cap == Cap::round ? HPDF_ROUND_END : HPDF_BUTT_END);
    }
    if (stroke.join != pen_.join) {
      HPDF_Page_SetLineJoin(page_, stroke.join == Join::round ? HPDF_ROUND_JOIN : HPDF_MITER_JOIN);
    }
    if (stroke.dash != pen_.dash) {
      std::vector<Dash::element> parts;
      for (const int part : stroke.dash) parts.push_back(static_cast<Dash::element>(part));
      HPDF_Page_SetDash(page_, parts.empty() ? nullptr : parts.data(), static_cast<HPDF_UINT>(parts.size()), Dash::phase{0});
    }
    pen_.weight = weight;
    pen_.cap = stroke.cap;
    pen_.join = stroke.join;
    pen_.dash = stroke.dash;
    trace(stroke.path);
    HPDF_Page_Stroke(page_);
  }

  void draw(const FillMark& fill) {
    pdf_.now("a shape was filled", number_);
    fill_with(grey_of(fill.ink));
    trace(fill.path);
    HPDF_Page_Fill(page_);
  }

  void draw(const ClipMark& clip) {
    pdf_.now("a clip group was begun", number_);
    const Pen outside = pen_;
    HPDF_Page_GSave(page_);
    trace(clip.path);
    HPDF_Page_Clip(page_);
    HPDF_Page_EndPath(page_);
    draw(clip.inside);
    HPDF_Page_GRestore(page_);
    pen_ = outside;
  }

  void draw(const LinkMark& link) {
    pdf_.now("a link was made", number_);
    const HPDF_Destination place = pdf_.place(link.anchor);
    if (place == nullptr) return;  // its sheet is not in this set
    const HPDF_Rect box{points(link.at.x), up(link.at.bottom()), points(link.at.right()), up(link.at.y)};
    const HPDF_Annotation made = HPDF_Page_CreateLinkAnnot(page_, box, place);
    HPDF_LinkAnnot_SetBorderStyle(made, 0, 0, 0);  // else viewers draw a black box round it
  }

  void draw(const AnchorMark&) {}  // found before any page is drawn

  void trace(const Path& path) {
    for (const PathStep& step : path) {
      const float x = points(step.to.x), y = up(step.to.y);
      switch (step.kind) {
        case PathStep::Kind::move: HPDF_Page_MoveTo(page_, x, y); break;
        case PathStep::Kind::line: HPDF_Page_LineTo(page_, x, y); break;
        case PathStep::Kind::curve:
          HPDF_Page_CurveTo(page_, points(step.a.x), up(step.a.y), points(step.b.x), up(step.b.y), x, y);
          break;
        case PathStep::Kind::close: HPDF_Page_ClosePath(page_); break;
      }
    }
  }

  static float grey_of(Ink ink) {
    switch (ink) {
      case Ink::black: return 0.0F;
      case Ink::mid_grey: return 0.55F;
      case Ink::pale_grey: return 0.88F;
      case Ink::white: return 1.0F;
    }
    return 0.0F;
  }

  Pdf& pdf_;
  HPDF_Page page_;
  Length height_;
  std::size_t number_;
  Pen pen_;
};

}  // namespace

std::variant<std::string, WriteFault> write_pdf(const PaperDocument& document, const FontSet& fonts) {
  if (std::string why = why_unprintable(document, fonts); !why.empty()) return WriteFault{std::move(why)};
  try {
    Pdf pdf(document, fonts);
    pdf.set_facts();
    pdf.add_pages();
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
      PageInk(pdf, document.pages[i], i).draw(document.pages[i].marks);
      pdf.check();
    }
    pdf.add_bookmarks();
    return pdf.bytes();
  } catch (const Refusal& refusal) {
    return WriteFault{refusal.sentence};
  }
}

std::string pdf_library() { return std::string("libharu ") + HPDF_GetVersion(); }

}  // namespace gownsheaf
