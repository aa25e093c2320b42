// Pages to PDF bytes and to a readable listing; figures to JSON. Decides nothing.
#pragma once
#include <string>
#include <variant>

#include "figures/changes.h"
#include "figures/figures.h"
#include "figures/plans.h"
#include "layout/page.h"

namespace gownsheaf {

struct WriteFault {
  std::string sentence;
};  // what libharu refused and what was being drawn
// Refuses an empty document, non-finite or far coordinates, text a face does not cover, invalid dashes, a path that is
// never painted. Same document, same bytes: no date, no id. Of two anchors with one name the first counts; a link to a
// name that no page holds is left out (its sheet is not in this set).
std::variant<std::string, WriteFault> write_pdf(const PaperDocument& document, const FontSet& fonts);
std::string pdf_library();  // "libharu 2.3.0"

// One line a mark, lengths in points to 0.01: "text 76.00 90.00 bold 28 \"At a glance\"". For tests and goldens.
std::string page_listing(const PaperDocument& document);

// For FigureFile::made_with: the PDF library's version and the hash of each font file.
std::string made_with(const FontSet& fonts);

struct FigureFile {
  std::string project_fingerprint, templates_fingerprint, options;  // -> "fingerprint"
  std::string made_with;      // library versions and font hashes; the one member outside comparison
  bool hide_private = false;  // no private figure, and no working or guess that rests on one (figures/privacy.h)
  bool shared = false;        // for others: no line numbers of the project file
};
// figures.json: ordered, every figure with key, exact value (ticks for lengths), printed text, formula, inputs, source,
// label, working; and the plans' lays and marks.
std::string figures_json(const Figures& figures, const Plans& plans, ShownIn shown_in, const FigureFile& about);

constexpr std::size_t kLargestFiguresFile = 16u << 20;  // 16 MiB

// figures.json back to figures, to compare today's with. `name` is the file's, for the sentence of a fault. Refused: what
// is no JSON or deeper than 32, JSON that is no figures file, a format that is not "gownsheaf figures 1", a figure without
// key or value, a key that stands twice, a length past 10^12 ticks, more than 200,000 figures. How a figure is rounded and
// what it asks for come from the table of figure kinds; of a kind that is not in it, exact.
std::variant<OlderFigures, WriteFault> read_figures_json(const std::string& bytes, const std::string& name);

}  // namespace gownsheaf
