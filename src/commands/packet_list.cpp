#include "commands/packet_list.h"

#include "commands/outlines_sheet.h"
#include "write/write.h"

namespace gownsheaf {
namespace {

std::string counted(int n, const std::string& one) { return std::to_string(n) + " " + one + (n == 1 ? "" : "s"); }

std::string kept_together(std::string text) {
  for (std::size_t at = 0; (at = text.find(' ', at)) != std::string::npos;) text.replace(at, 1, "\u00A0");
  return text;
}

std::string cloths_of(const PacketFacts& about) {
  std::string text;
  for (const ClothTotal& cloth : about.cloths) {
    const bool nothing = cloth.needed.rfind("0 ", 0) == 0;  // remnants and stock hold every piece
    text += (text.empty() ? "" : "; ") + cloth.cloth + (nothing ? ", from what is there" : " " + kept_together(cloth.needed));
  }
  return text;
}

// A folder's own project is called by its folder.
std::string packet_name(const std::string& stem) {
  const std::string file = file_name_of(stem);
  return file == "project" && file != stem ? folder_of(stem) : stem;
}

std::string open_of(const PacketResult& r) {
  std::string text;
  if (r.record && r.record->about.holds > 0) text = counted(r.record->about.holds, "hold");
  if (r.record && r.record->about.warnings > 0) text += (text.empty() ? "" : ", ") + counted(r.record->about.warnings, "warning");
  if (r.state == PacketState::failed) text = r.record ? "failed; the packet is an older one" : "failed; no packet";
  return text;
}

}  // namespace

Sheet packet_list_sheet(const std::vector<PacketResult>& results, const FontSet& fonts) {
  const auto shown = [&](const std::string& text) { return words(in_letters_held(fonts, text)); };
  int failed = 0;
  for (const PacketResult& r : results) failed += r.state == PacketState::failed ? 1 : 0;
  Sheet sheet;
  sheet.id = sheet.anchor = "packets";
  sheet.title = "Packets";
  sheet.answer = words(counted(static_cast<int>(results.size()), "project") +
                       (failed > 0 ? ", " + std::to_string(failed) + " failed." : "."));
  Table table;
  table.columns = {{words("Packet"), Column::Kind::words, 116},
                   {words("Title"), Column::Kind::words, 0},
                   {words("For"), Column::Kind::words, 42},
                   {words("Cloth to buy"), Column::Kind::words, 132},
                   {words("Open"), Column::Kind::words, 72}};
  for (const PacketResult& r : results) {
    const PacketFacts about = r.record ? r.record->about : PacketFacts{};
    table.rows.push_back({Row::Kind::plain,
                          {{shown(packet_name(r.project.stem))},
                           {shown(about.title)},
                           {shown(about.wearer)},
                           {shown(cloths_of(about))},
                           {words(open_of(r))}}});
  }
  if (!table.rows.empty()) sheet.blocks.push_back({std::move(table)});
  return sheet;
}

std::variant<std::string, FileFault> packet_list_pdf(const std::vector<PacketResult>& results, const FontSet& fonts, bool a4) {
  const Typesetter typesetter(fonts, binder_scale());
  const PageShape shape = a4 ? page_shape(PaperName::a4, HoleCount::two) : page_shape(PaperName::letter, HoleCount::three);
  PaperDocument document = lay_out({packet_list_sheet(results, fonts)}, shape, {"Packets", "All projects"}, typesetter);
  document.title = "Packets";
  std::variant<std::string, WriteFault> pdf = write_pdf(document, fonts);
  if (const WriteFault* refused = std::get_if<WriteFault>(&pdf)) return FileFault{refused->sentence};
  return std::move(std::get<std::string>(pdf));
}

}  // namespace gownsheaf
