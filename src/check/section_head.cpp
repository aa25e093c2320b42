// Who and when; and what the file says about its own messages.
#include "check/sections.h"

namespace gownsheaf {

namespace {
constexpr std::int64_t kFormat = 1;
}

void fill_head(const Filling& file, Project& project) {
  const Item& root = file.root;
  const auto format = root.count("gownsheaf");
  if (format.known() && *format > kFormat)
    report(file, {"gownsheaf", ""}, Severity::error, "newer-format", format.at,
           "This file says `gownsheaf: " + root.plain("gownsheaf") + "`; this program reads 1.", "use a newer program");

  project.title = clean_name(root.plain("title"));
  if (const Entry* title = root.at("title")) project.title_at = title->at;
  project.worn_on = root.day("worn on");
  project.today = root.day("today");

  const auto shown = root.word("show lengths in");
  if (shown.known()) {
    project.show_lengths_in = Given<ShownIn>::written(*shown == "inches" ? ShownIn::inches : ShownIn::centimetres, shown.at);
  } else {
    const UnitsSeen& seen = file.units;
    const bool inches = seen.inches == seen.centimetres ? seen.inches_first : seen.inches > seen.centimetres;
    project.show_lengths_in =
        Given<ShownIn>::guessed(inches ? ShownIn::inches : ShownIn::centimetres,
                                seen.inches == seen.centimetres ? "the unit written first" : "the unit written most");
  }
  project.garment = choice(root.word("garment"), Garment::other);
  if (root.is_block("garment")) project.garment = choice(root.block("garment").word("kind"), Garment::other);
  project.joined_at_waist = root.yes_no("joined at waist");
  project.lining_sewn_in = root.word("lining sewn in");

  for (const Item& item : root.items("accept")) {
    Accepted accepted;
    accepted.code = item.plain("code");
    accepted.item = clean_name(item.plain("at"));
    accepted.because = item.plain("because");
    if (const Entry* code = item.at("code")) accepted.at = code->at;
    project.accept.push_back(std::move(accepted));
  }
}

}  // namespace gownsheaf
