#include <cstdio>

#include "commands/commands.h"
#include "commands/outlines_sheet.h"
#include "files/files.h"
#include "outline/pick.h"
#include "write/outlines_json.h"
#include "write/write.h"

namespace gownsheaf {
namespace {

// What can be said of a drawing that was read: whether a piece is in it, and whether its test square is as large as it should be.
void judge(const SvgDrawing& drawing, Diagnostics& diag) {
  bool any = false;
  for (const DrawnOutline& o : drawing.outlines) any = any || o.box.width >= kLeastPiece || o.box.height >= kLeastPiece;
  if (!any)
    diag.error(
        "no-outline", {drawing.file},
        drawing.outlines.empty() ? "The drawing holds no closed outline." : "The drawing holds no outline of 10 mm or more.",
        drawing.open_lines.empty() ? "is the layer with the pieces shown?"
                                   : "close the lines in the drawing program; is the scale right?");
  note_test_square(drawing, diag);
}

int write_sheet(const Settings& settings, const SvgDrawing& drawing) {
  FontFault fault;
  const std::unique_ptr<FontSet> fonts = open_fonts(settings.font_root, fault);
  if (!fonts) {
    say_fault(settings, fault.sentence);
    return 3;
  }
  const Typesetter typesetter(*fonts, binder_scale());
  const PageShape shape =
      settings.paper == "a4" ? page_shape(PaperName::a4, HoleCount::two) : page_shape(PaperName::letter, HoleCount::three);
  const std::string name = in_letters_held(*fonts, file_name_of(drawing.file));
  PaperDocument document = lay_out({outlines_sheet(drawing, typesetter, shape)}, shape, {name, "Outlines"}, typesetter);
  document.title = "Outlines of " + name;
  std::variant<std::string, WriteFault> pdf = write_pdf(document, *fonts);
  if (const WriteFault* refused = std::get_if<WriteFault>(&pdf)) {
    say_fault(settings, refused->sentence);
    return 3;
  }
  if (const std::optional<FileFault> unwritten = write_whole({{settings.output, std::get<std::string>(pdf)}})) {
    say_fault(settings, unwritten->sentence);
    return 3;
  }
  return 0;
}

}  // namespace

int run_outlines(const Settings& settings) {
  if (!settings.output.empty() && would_write_over(settings, settings.output, "--sheet")) return 2;
  const FileResult<std::string> bytes = read_named_file(settings.project, kLargestDrawing);
  if (!bytes.ok()) {
    say_fault(settings, bytes.fault.sentence);
    return 3;
  }
  Diagnostics diag;
  const std::optional<SvgDrawing> drawing = read_svg(*bytes.value, settings.project, diag);
  if (drawing) judge(*drawing, diag);
  print_messages(settings, diag, {drawing_lines(*bytes.value, settings.project)});
  if (!drawing || diag.has_errors()) return 1;
  if (!settings.output.empty())
    if (const int code = write_sheet(settings, *drawing); code != 0) return code;
  const std::string json = outlines_json(*drawing, diag);
  if (std::fwrite(json.data(), 1, json.size(), stdout) != json.size() || std::fflush(stdout) != 0) {
    say_fault(settings, "Standard output could not be written.");
    return 3;
  }
  return 0;
}

}  // namespace gownsheaf
