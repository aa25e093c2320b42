// The size table, and which of its rows is made.
#include <algorithm>
#include <array>

#include "check/sections.h"
#include "project/sizes.h"

namespace gownsheaf {

namespace {

using By = SizeChoice::By;
constexpr std::array<std::pair<std::string_view, By>, 3> kWays = {
    {{"nearest", By::nearest}, {"larger", By::larger}, {"between", By::between}}};

std::optional<By> way_of(const std::string& folded) {
  for (const auto& [word, by] : kWays)
    if (word == folded) return by;
  return {};
}

std::string in_words(const Project& project, Length length) {
  const ShownIn in = project.show_lengths_in.known() ? *project.show_lengths_in : ShownIn::inches;
  return text_of(length, in, mark_step(in), Rounding::nearest).plain();
}

bool some_piece_by_size(const Filling& file) {
  for (const Item& item : file.root.items("pieces"))
    if (item.is_block("by size")) return true;
  return false;
}

// Bust for bodices, chest for coats, hip for skirts (Butterick, The New Dressmaker, p. 11, for bodice and skirt).
std::vector<std::string> girths_by_custom(const Filling& file, const Project& project) {
  std::optional<Garment> garment = project.garment.value;
  if (!garment) {
    std::set<PartOf> parts;
    for (const Item& item : file.root.items("pieces")) {
      Named named;
      named.name = clean_name(item.plain("piece"));
      if (const auto part = part_of_piece(item, named); part.known()) parts.insert(*part);
    }
    garment = garment_of(parts);
  }
  if (garment == Garment::coat || garment == Garment::waistcoat) return {"chest", "bust", "waist", "hip"};
  if (garment == Garment::skirt || garment == Garment::petticoat) return {"hip", "waist", "bust", "chest"};
  return {"bust", "chest", "waist", "hip"};
}

bool in_every_row(const SizeTable& table, const std::string& girth) {
  return std::all_of(table.sizes.begin(), table.sizes.end(), [&](const SizeRow& row) { return row.girths.contains(girth); });
}

std::vector<std::string> labels_of(const SizeTable& table) {
  std::vector<std::string> labels;
  for (const SizeRow& row : table.sizes) labels.push_back(row.label);
  return labels;
}

std::optional<std::size_t> row_with(const SizeTable& table, std::string_view label) {
  for (std::size_t i = 0; i < table.sizes.size(); ++i)
    if (folded_name(table.sizes[i].label) == folded_name(label)) return i;
  return {};
}

SizeTable read_table(const Filling& file, const Item& item) {
  SizeTable table;
  table.name = clean_name(item.plain("name"));
  table.at = item.entry()->key_at;
  table.girths_finished = item.plain("girths are") == "finished";
  for (const Item& written : item.items("sizes")) {
    SizeRow row;
    row.label = clean_name(written.plain("size"));
    row.at = written.entry()->at;
    if (const Entry* label = written.at("size")) row.at = label->at;
    for (const Entry& e : written.entry()->children) {
      const auto measure = e.key == "size" ? std::nullopt : file.names.find("measures", e.key);
      if (!measure || e.kind != Entry::Kind::text) continue;
      Given<Length> given;
      given.at = e.at;
      const auto read = read_length(e.text, e.key);
      if (read.ok()) given = Given<Length>::written(read.value().length, e.at);
      row.girths.emplace(*measure, std::move(given));
    }
    table.sizes.push_back(std::move(row));
  }
  return table;
}

// Rows rise in every measure; in the girth that decides, no two are the same.
void check_rising(const Filling& file, const SizeTable& table) {
  for (std::size_t i = 1; i < table.sizes.size(); ++i)
    for (const auto& [name, girth] : table.sizes[i].girths) {
      const auto before = girth_of(table.sizes[i - 1], name);
      if (!girth.known() || !before) continue;
      const bool decides = table.chosen_by.known() && *table.chosen_by == name;
      if (*girth > *before || (*girth == *before && !decides)) continue;
      report(file, {"size table", table.sizes[i].label}, Severity::error, "table-falls", girth.at,
             sentence_case(name) + " of size " + table.sizes[i].label + " is " +
                 (*girth == *before ? "the same as of " : "less than of ") + table.sizes[i - 1].label + ".",
             *girth == *before ? "the girth that decides the size must rise from row to row"
                               : "rows rise: write the smallest size first",
             {table.sizes[i - 1].girths.at(name).at});
    }
}

bool check_table(const Filling& file, const Project& project, const Item& item, SizeTable& table) {
  const auto errors = [&] {
    return std::count_if(file.diag.all().begin(), file.diag.all().end(),
                         [](const Diagnostic& d) { return d.severity == Severity::error && d.section == "size table"; });
  };
  const About about{"size table", table.name};
  if (table.sizes.size() == 1)
    report(file, about, Severity::error, "size-rows", table.sizes.front().at,
           "A size table needs two rows or more; this has one.",
           "for a single size write its label alone: `size: " + table.sizes.front().label + "`");
  for (const SizeRow& row : table.sizes)
    if (way_of(folded_name(row.label)))
      report(file, about, Severity::error, "size-reserved", row.at,
             "A size cannot be called `" + row.label + "`: after `size:` the word says how the size is chosen.", "another label");
  if (const Entry* e = item.at("chosen by")) {
    if (const auto name = file.names.find("measures", e->text)) table.chosen_by = Given<std::string>::written(*name, e->at);
  } else if (!table.sizes.empty()) {
    const std::vector<std::string> custom = girths_by_custom(file, project);
    auto girth = std::find_if(custom.begin(), custom.end(), [&](const std::string& g) { return in_every_row(table, g); });
    if (girth == custom.end()) girth = custom.begin();
    table.chosen_by = Given<std::string>::standing(*girth, 'a', "bust for bodices, chest for coats, hip for skirts");
  }
  if (table.chosen_by.known())
    for (const SizeRow& row : table.sizes)
      if (!row.girths.contains(*table.chosen_by))
        report(file, about, Severity::error, "size-row-short", row.at,
               "Size " + row.label + " has no " + *table.chosen_by + ", and the size is chosen by " + *table.chosen_by + ".",
               "`" + *table.chosen_by + ": …` in this row, or `chosen by:` a girth that every row has");
  check_rising(file, table);
  return errors() == 0 && table.chosen_by.known() && !table.sizes.empty();
}

// What is held against the table. Says so where it is missing.
std::optional<Length> girth_to_hold(const Filling& file, const Project& project, const SizeTable& table, const SourceSpan& at) {
  const std::string& name = *table.chosen_by;
  const std::optional<Length> body = all_round(project, name);
  if (!body) {
    const Entry* measured = file.root.block("measures").at(name);
    if (measured == nullptr || measured->text == kToMeasure)  // else it does not read, and that was told
      report(file, {"size", name}, some_piece_by_size(file) ? Severity::error : Severity::hold, "size-needs-measure", at,
             "The size is chosen by " + name + ", and no " + name + " is measured.",
             "`" + name + ": …` under `measures`, or name the size: `size: " + table.sizes.front().label + "`");
    return {};
  }
  if (!table.girths_finished) return body;
  const auto ease = project.ease.find(name);
  if (ease != project.ease.end() && ease->second.known()) return *body + *ease->second;
  report(file, {"size", name}, Severity::hold, "size-needs-ease", at,
         "The table's girths are of the finished garment, and no ease is written for " + name + ": none was added to the body.",
         "`ease: { " + name + ": 1 in }`, say");
  return body;
}

void say_where_it_lies(const Filling& file, const Project& project, const SizeTable& table, const SizeChoice& choice,
                       const SourceSpan& at) {
  using Lies = SizeChoice::Lies;
  const std::string& name = *table.chosen_by;
  const std::string girth = in_words(project, *choice.girth);
  const auto row = [&](std::size_t i) {
    return table.sizes[i].label + " (" + in_words(project, *girth_of(table.sizes[i], name)) + ")";
  };
  const auto by = [&](Length a, Length b) { return in_words(project, a > b ? a - b : b - a); };
  const Length end = *girth_of(table.sizes[choice.below], name);
  const std::string named = sentence_case(table.girths_finished ? "finished " + name : name) + " " + girth;
  if (choice.lies == Lies::over_the_table)
    report(file, {"size", name}, Severity::hold, "size-outside", at,
           named + " is more than the largest size, " + row(choice.below) + ", by " + by(end, *choice.girth) +
               "; a table is not carried on beyond its ends.",
           "a table that reaches so far; or add the difference to the pattern of the largest size and accept this");
  if (choice.lies == Lies::under_the_table)
    report(file, {"size", name}, Severity::warning, "size-outside", at,
           named + " is less than the smallest size, " + row(choice.below) + ", by " + by(end, *choice.girth) +
               "; a table is not carried on beyond its ends.",
           "take the difference in at the mock-up, or use a table that begins lower");
  if (choice.halfway && choice.by == By::nearest)
    report(file, {"size", name}, Severity::note, "size-halfway", at,
           named + " is as near to " + row(choice.below) + " as to " + row(choice.above) + "; the larger is made.",
           "`size: " + table.sizes[choice.below].label + "` makes the smaller");
}

void choose(const Filling& file, Project& project, const std::string& wanted, const SourceSpan& at) {
  const SizeTable& table = *project.size_table;
  const std::optional<By> way = way_of(folded_name(wanted));
  SizeChoice choice;
  const auto labelled = row_with(table, wanted);
  if (!way && !labelled) {
    std::vector<std::string> near = labels_of(table);
    for (const auto& [word, by] : kWays) near.emplace_back(word);
    const std::string meant = did_you_mean(wanted, near);
    const bool word = !meant.empty() && way_of(meant).has_value();
    const std::string key = file.size_option ? "--size " : "size: ";
    report(file, {"size", wanted}, Severity::error, "size-unknown", at,
           "The table has no size " + wanted + "; it has " + listed(labels_of(table)) + ".",
           word ? "did you mean `" + key + meant + "`?" : "`" + key + "between`, or `" + key + "nearest`");
    return;
  }
  std::optional<Length> girth;
  if (way || all_round(project, *table.chosen_by)) girth = girth_to_hold(file, project, table, at);
  if (!girth && way) return;
  std::vector<Length> rising;
  for (const SizeRow& row : table.sizes) {
    const auto one = girth_of(row, *table.chosen_by);
    if (!one) return;  // written, and told to be no length
    rising.push_back(*one);
  }
  if (girth) choice = place_in_table(rising, *girth);
  choice.by = way.value_or(By::label);
  choice.chosen_by = *table.chosen_by;
  choice.row = !way                  ? *labelled
               : *way == By::nearest ? nearest_row(choice)
               : *way == By::larger  ? larger_row(choice)
                                     : choice.below;
  choice.made = table.sizes[*choice.row].label;
  if (choice.by == By::between && choice.lies == SizeChoice::Lies::between_rows) {
    choice.between_to = table.sizes[choice.above].label;
    choice.between = choice.fraction;
  }
  if (girth && way) say_where_it_lies(file, project, table, choice, at);
  project.size_choice = std::move(choice);
}

// A label without a table picks among what the pieces give by size.
void choose_without_table(const Filling& file, Project& project, const SourceSpan& at) {
  const bool by_size = some_piece_by_size(file);
  if (!project.size.known()) {
    if (by_size)
      report(file, {"size", ""}, Severity::error, "size-without-table", at,
             "Pieces are given by size, and nothing says which size is made.",
             "`size: 14`, say, or a `size table` to choose from");
    return;
  }
  const std::string& wanted = *project.size;
  const bool by_option = file.size_option && project.size.at.line == 0;
  const std::string said = by_option ? "`--size " + wanted + "`" : "`size: " + wanted + "`";
  if (way_of(folded_name(wanted))) {
    report(file, {"size", wanted}, Severity::error, "size-without-table", at, said + " needs a `size table` to choose from.",
           "`size table: { name: …, sizes: [ … ] }`, or the label of a size");
    return;
  }
  if (!by_size && by_option) {
    report(file, {"size", wanted}, Severity::error, "size-without-table", at,
           said + " changes nothing: the project has no `size table`, and no piece is given `by size`.", "leave the option out");
    return;
  }
  SizeChoice choice;
  choice.made = wanted;
  project.size_choice = std::move(choice);
}

}  // namespace

void fill_size_table(const Filling& file, Project& project) {
  const Item item = file.root.block("size table");
  const Entry* written = file.root.at("size");
  project.size = file.root.text("size");
  if (project.size.known()) project.size.value = clean_name(*project.size);
  if (file.size_option) {
    const std::string option = clean_name(*file.size_option);
    if (!project.size.known() || folded_name(option) != folded_name(*project.size))
      project.size = Given<std::string>::written(option, SourceSpan{project.file, 0, 0, 0});
  }
  SourceSpan at{project.file, 0, 0, 0};
  if (project.size.known()) at = project.size.at;
  if (item.entry() == nullptr) {
    if (const Entry* pieces = file.root.at("pieces"); pieces != nullptr && !project.size.known()) at = pieces->key_at;
    if (!file.root.has("size table")) choose_without_table(file, project, at);
    return;
  }
  if (written == nullptr && !file.size_option) {
    project.size = Given<std::string>::standing("nearest", 'c', "nearest, where no size is written");
    at = item.entry()->key_at;
  }
  SizeTable table = read_table(file, item);
  const bool sound = check_table(file, project, item, table);
  if (!sound) return;
  project.size_table = std::move(table);
  if (project.size.known()) choose(file, project, *project.size, at);
  for (const Item& piece : file.root.items("pieces"))
    for (const OfOneSize& size : sizes_of_piece(piece))
      if (!row_with(*project.size_table, size.label))
        report(file, {"pieces", clean_name(piece.plain("piece"))}, Severity::error, "size-unknown", size.item.entry()->key_at,
               "The table has no size " + size.label + "; it has " + listed(labels_of(*project.size_table)) + ".",
               "take this size out, or add its row to the table");
}

}  // namespace gownsheaf
