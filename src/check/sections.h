// One file a section: takes the values that the walk over all keys found readable, fills in what is guessed and what
// stands by default, and checks what only that section can know.
#pragma once
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "check/drawn_pieces.h"
#include "check/key_check.h"
#include "check/names.h"
#include "check/reading.h"
#include "project/project.h"
#include "templates/templates.h"

namespace gownsheaf {

struct Filling {
  Item root;
  const KnownNames& names;
  const Templates& templates;
  UnitsSeen units;
  Diagnostics& diag;
  std::optional<std::string> size_option = {};  // `--size`: wins over the file
  Drawings* drawings = nullptr;
};

void fill_head(const Filling& file, Project& project);   // before all others
void fill_rules(const Filling& file, Project& project);  // before what rests on a rule
void fill_measures(const Filling& file, Project& project);
void fill_wearer(const Filling& file, Project& project);  // who, what it is worn for, underlayers still to make
void fill_taken(const Filling& file, Project& project);
void judge_measures_day(const Filling& file, const Project& project);  // after the fittings are known
void fill_finished_girths(const Filling& file, Project& project);      // after measures and ease, which must agree
void fill_fittings(const Filling& file, Project& project);
void fill_cloths(const Filling& file, Project& project);
void fill_notions(const Filling& file, Project& project);
void fill_skirt(const Filling& file, Project& project);       // before the pieces: its hem is theirs
void fill_size_table(const Filling& file, Project& project);  // before the pieces: it settles which of their sizes is made
void fill_pieces(const Filling& file, Project& project);
void fill_seams_and_edges(const Filling& file, Project& project);
void fill_rounds(const Filling& file, Project& project);
void fill_bone_stock(const Filling& file, Project& project);
void fill_bones(const Filling& file, Project& project);
void fill_strain(const Filling& file, Project& project);    // after the closures and the skirt
void fill_closures(const Filling& file, Project& project);  // after edges and notions
void fill_plackets(const Filling& file, Project& project);  // after seams and edges
void fill_pleats(const Filling& file, Project& project);
void fill_pockets(const Filling& file, Project& project);
void fill_drapery(const Filling& file, Project& project);
void fill_piping(const Filling& file, Project& project);  // after seams and edges, as the next two
void fill_binding(const Filling& file, Project& project);
void fill_trims(const Filling& file, Project& project);
// Last of all, when every section is settled and those that failed are empty.
void add_pieces_made_for(const Filling& file, Project& project);
void fill_work(const Filling& file, Project& project);
void fill_work_days(const Filling& file, const Item& work, Project& project);  // parts of fill_work
void fill_changed_steps(const Filling& file, const Item& work, Project& project);
void check_parts_done(const Filling& file, const Item& work, const Project& project);
void fill_pace(const Filling& file, Project& project);
void fill_print(const Filling& file, Project& project);
void guess_from_pieces(Project& project);  // garment, joined at waist, lining, what each cloth is used as

// What a piece belongs to, as written or by its name.
Given<PartOf> part_of_piece(const Item& item, const Named& named);
std::optional<Garment> garment_of(const std::set<PartOf>& parts);  // nothing where no part tells it
// One direction of a piece, "width" or "length", as the item's own keys have it.
Size own_size(const Item& item, std::string_view direction);
// The same with `by size` settled: what is given for the size that is made stands in place of the piece's own.
Size size_made(const Filling& file, const Item& item, const std::string& piece, std::string_view direction, Project& project);
bool given_by_size(const Item& item, std::string_view direction);
// How many are made, and finished lengths of edges, with `by size` settled in the same way. `edges` are put into the piece.
Given<Make> make_made(const Filling& file, const Item& item, const std::string& piece, Project& project);
void edges_made(const Filling& file, const Item& item, Piece& piece, Project& project);
Given<Make> make_of(const Filling& file, const Item& item);  // as the item's own keys have it
void fill_edges(const Item& item, std::string_view key, std::map<std::string, Given<Length>>& edges);
// The blocks under `by size` of a piece, in the file's order.
struct OfOneSize {
  std::string label;
  Item item;
};
std::vector<OfOneSize> sizes_of_piece(const Item& item);

// A message about one item of a section.
struct About {
  std::string_view section;
  std::string item;
};
void report(const Filling& file, const About& about, Severity severity, std::string code, const SourceSpan& at,
            std::string sentence, std::string hint = "", std::vector<SourceSpan> also = {});
// Name, older name and note. `naming` is the key that names an item of a list, "" for a map. Says so when the older name
// is still in use.
Named named_of(const Filling& file, const Item& item, std::string_view section, std::string_view naming);
// Names in a list as they were first written where they were given; unknown ones are left out (the walk reported them).
std::vector<std::string> names_in(const Filling& file, const Item& item, std::string_view key, std::string_view sections);
std::string name_in(const Filling& file, const Item& item, std::string_view key, std::string_view sections);
// Lengths under the names of measures; those that do not read were reported by the walk.
std::map<std::string, Given<Length>> girths_in(const Filling& file, const Entry* map);
// An id of a step as the order of work writes it, and the ids in a list.
std::string step_id_in(const Filling& file, std::string_view written);
std::vector<std::string> step_ids_in(const Filling& file, const Item& item, std::string_view key);
std::vector<Item> items_of_map(const Item& root, std::string_view section);
bool has_word(std::string_view name, std::string_view word);  // whole word, case ignored

}  // namespace gownsheaf
