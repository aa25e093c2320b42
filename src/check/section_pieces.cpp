// The pieces: what each is cut from, how many, how large, with what allowances.
#include <algorithm>

#include "check/sections.h"

namespace gownsheaf {

namespace {

struct PartWord {
  std::string_view word;
  PartOf part;
};
// First match wins: a pocket facing is a facing, a skirt band is a band.
constexpr PartWord kPartWords[] = {
    {"facing", PartOf::facing},       {"pocket", PartOf::pocket},   {"welt", PartOf::pocket},    {"collar", PartOf::collar},
    {"cuff", PartOf::sleeve},         {"sleeve", PartOf::sleeve},   {"waistband", PartOf::band}, {"band", PartOf::band},
    {"overskirt", PartOf::drapery},   {"bertha", PartOf::drapery},  {"sash", PartOf::drapery},   {"apron", PartOf::drapery},
    {"petticoat", PartOf::petticoat}, {"corset", PartOf::corset},   {"stays", PartOf::corset},   {"ruche", PartOf::trimming},
    {"bow", PartOf::trimming},        {"ruffle", PartOf::trimming}, {"flounce", PartOf::skirt},  {"skirt", PartOf::skirt},
    {"breadth", PartOf::skirt},       {"gore", PartOf::skirt},      {"leg", PartOf::leg},        {"breeches", PartOf::leg},
    {"trousers", PartOf::leg},        {"drawers", PartOf::leg},     {"bodice", PartOf::bodice},  {"front", PartOf::bodice},
    {"back", PartOf::bodice},
};

bool hangs(const Piece& piece) {  // has a hem and a waist end
  return piece.part_of.known() && (*piece.part_of == PartOf::skirt || *piece.part_of == PartOf::petticoat);
}

}  // namespace

Size own_size(const Item& item, std::string_view direction) {
  Size size;
  const std::string finished = "finished " + std::string(direction), cut = "cut " + std::string(direction);
  if (const Entry* e = item.at(finished)) {
    size.at = e->at;
    if (const auto length = item.length(finished); length.known()) {
      size.kind = Size::Kind::finished;
      size.value = *length;
    }
  } else if (const Entry* full = item.at(cut)) {
    size.at = full->at;
    if (full->text == "full") {
      size.kind = Size::Kind::full_width;
    } else if (full->text == "share of bought") {
      size.kind = Size::Kind::share_of_bought;
    } else if (const auto length = item.length(cut); length.known()) {
      size.kind = Size::Kind::cut;
      size.value = *length;
    }
  }
  return size;
}

Given<Make> make_of(const Filling& file, const Item& item) {
  Make make;
  if (const auto round = item.length("joined round"); round.known()) {
    make.kind = Make::Kind::joined_round;
    make.joined_round = *round;
    return Given<Make>::written(make, round.at);
  }
  if (const Entry* fills = item.at("fills")) {
    make.kind = Make::Kind::fills;
    make.fills = name_in(file, item, "fills", "pleats|rounds");
    return Given<Make>::written(make, fills->at);
  }
  const Entry* e = item.at("make");
  if (e == nullptr) return Given<Make>::standing(make, 'c', "one, where no number is written");
  Given<Make> given;
  given.at = e->at;
  if (e->text == kToMeasure) {
    given.origin = Origin::to_measure;
    return given;
  }
  std::string_view number = e->text;
  if (number == "pair") {
    make.kind = Make::Kind::pairs;
    return Given<Make>::written(make, e->at);
  }
  for (const std::string_view end : {" pairs", " pair"})
    if (number.ends_with(end)) {
      number.remove_suffix(end.size());
      make.kind = Make::Kind::pairs;
    }
  const auto read = read_count(number, "make");
  if (!read.ok()) return given;
  make.number = read.value();
  return Given<Make>::written(make, e->at);
}

namespace {

void check_sizes(const Filling& file, const Item& item, const Piece& piece) {
  if (item.has("outline") || (!item.has("piece") && !item.has("from"))) return;  // the latter is hardly a piece at all
  const About about{"pieces", piece.named.name};
  const bool width_follows = item.has("fills") || item.has("joined round");
  for (const std::string_view direction : {"width", "length"}) {
    const std::string d(direction);
    // A bare `width` or `length` was asked about already.
    const auto misspelt = [&](const std::string& key) { return is_misspelt_in(*item.entry(), "pieces/*", key); };
    if (misspelt("finished " + d) || misspelt("cut " + d)) continue;
    if (given_by_size(item, d)) continue;  // whether the size made is there was asked already
    if (item.has("finished " + d) || item.has("cut " + d) || item.has(d) || (d == "width" && width_follows)) continue;
    report(file, about, Severity::error, "key-missing", item.entry()->at,
           (piece.named.name.empty() ? "This piece" : "Piece " + piece.named.name) + " needs `finished " + d + "` or `cut " + d +
               "`.",
           "stitch line to stitch line is `finished " + d + "`; where the scissors go is `cut " + d + "`");
  }
}

void fill_allowances(const Item& item, const Item& garment, const std::optional<SkirtHem>& skirt_hem, Piece& piece) {
  const auto first_known = [](Given<Length> own, const Given<Length>& wide) { return own.known() ? own : wide; };
  const bool skirt = hangs(piece);
  piece.seam_allowance = first_known(item.length("seam allowance"), garment.length("seam"));
  if (!piece.seam_allowance.known())
    piece.seam_allowance = Given<Length>::standing(Length::sixty_fourths(32), 'c', "1/2 in, where no allowance is written");
  piece.hem = item.length("hem");
  if (!piece.hem.known() && skirt) {
    piece.hem = garment.length("hem");
    if (!piece.hem.known() && skirt_hem && !skirt_hem->faced_with.empty())
      piece.hem = Given<Length>::guessed(*piece.seam_allowance, "its seam with the facing", piece.seam_allowance.at);
    if (!piece.hem.known() && skirt_hem && skirt_hem->depth.known())
      piece.hem = Given<Length>::guessed(*skirt_hem->depth, "the depth of the skirt's hem", skirt_hem->depth.at);
    if (!piece.hem.known()) piece.hem = Given<Length>::standing(Length::inches(3), 'a', "3 in on skirts and petticoats");
  }
  piece.top = item.length("top");
  if (!piece.hem.known() && piece.top.known())
    piece.hem = Given<Length>::guessed(*piece.seam_allowance, "the seam allowance", piece.seam_allowance.at);
  if (!piece.hem.known()) piece.hem = Given<Length>::standing(Length{}, 'c', "no hem where none is written");
  if (!piece.top.known() && skirt) piece.top = garment.length("top");
  if (!piece.top.known()) {
    const Given<Length>& seam = piece.seam_allowance;
    piece.top = seam.origin == Origin::standing ? Given<Length>::standing(*seam, 'c', "as the seam allowance")
                                                : Given<Length>::guessed(*seam, "the seam allowance", seam.at);
  }
}

// Where a joined panel may have its joins.
void fill_joining(const Filling& file, const Item& item, Piece& piece) {
  const Item block = item.block("may be pieced");
  if (block.entry() == nullptr) return;
  piece.joining.at = block.entry()->key_at;
  piece.joining.joins = block.count("joins").value;
  for (const Entry* one : block.values("keep clear of")) {
    if (one->kind != Entry::Kind::text) continue;
    const std::string place = clean_name(one->text);
    constexpr std::string_view kFromEdge = " from edge";
    if (folded_name(place) == "centre") {
      piece.joining.clear_of_centre = true;
    } else if (place.ends_with(kFromEdge)) {
      const auto read = read_length(place.substr(0, place.size() - kFromEdge.size()), "keep clear of");
      if (read.ok()) piece.joining.clear_from_edge = read.value().length;
      else
        report(file, {"pieces", piece.named.name}, Severity::error, "edge-of", one->at,
               "`" + one->text + "`: no length is read before `from edge`.", "`keep clear of: [2 in from edge]`");
    } else if (std::any_of(piece.edges.begin(), piece.edges.end(), [&](const auto& e) { return same_name(e.first, place); })) {
      piece.joining.clear_of.push_back(place);
    } else if (!piece.named.name.empty()) {
      report(file, {"pieces", piece.named.name}, Severity::error, "unknown-name", one->at,
             "No edge of " + piece.named.name + " is called `" + one->text + "`.",
             "write it under `edges` of the piece, or `centre`, or `2 in from edge`");
    }
  }
}

// Where a plaid or a stripe must meet; a piece that is drawn shows the point.
void fill_match(const Filling& file, const Item& item, const Project& project, Piece& piece) {
  const Entry* match = item.at("match at");
  if (match == nullptr) return;
  piece.match_at_span = match->key_at;
  const About about{"pieces", piece.named.name};
  for (const Entry* one : item.values("match at")) {
    if (one->kind != Entry::Kind::text) continue;
    const std::string edge = clean_name(one->text);
    piece.match_at.push_back(edge);
    const bool there =
        std::any_of(piece.edges.begin(), piece.edges.end(), [&](const auto& e) { return same_name(e.first, edge); });
    if (!there && !piece.drawn)
      report(file, about, Severity::error, "unknown-name", one->at,
             "No edge of " + piece.named.name + " is called `" + one->text + "`.",
             "write it under `edges` of the piece: `edges: { front: 16 in }`");
  }
  if (piece.match_at.empty() || project.failed_sections.count("cloths") != 0) return;
  const bool repeats = std::any_of(piece.from.begin(), piece.from.end(), [&](const std::string& name) {
    const Cloth* cloth = project.cloth(name);
    return cloth == nullptr || (cloth->repeat && (cloth->repeat->along || cloth->repeat->across));
  });
  if (!repeats)
    report(file, about, Severity::error, "repeat-needed", match->key_at,
           capital(piece.named.name) + " is to be matched, and none of its cloths has a repeat.",
           "`repeat: { along: 6 cm, across: 6 cm }` on the cloth");
  if (piece.drawn && std::none_of(piece.drawn->lines.begin(), piece.drawn->lines.end(),
                                  [](const DrawnPiece::Line& l) { return l.kind == "match"; }))
    report(file, about, Severity::error, "match-unmarked", match->key_at,
           capital(piece.named.name) + " is to be matched, and no line of its drawing shows where.",
           "a short line of class `match`: its middle is where the plaid must meet");
}

// A drawn piece is cut as it is drawn: its sizes are those of the box round its cut line.
void fill_outline(const Filling& file, const Item& item, Piece& piece) {
  const Entry* outline = item.at("outline");
  if (outline == nullptr || outline->kind != Entry::Kind::text || file.drawings == nullptr) return;
  for (const char* given : {"finished width", "finished length", "cut width", "cut length", "lining longer by"})
    if (const Entry* size = item.at(given))
      report(file, {"pieces", piece.named.name}, Severity::error, "cut-or-finished", size->key_at,
             capital(piece.named.name) + " has an outline and `" + given + "`: its size is the outline's.",
             "take one of the two out");
  if (piece.make.known() && (piece.make->kind == Make::Kind::joined_round || piece.make->kind == Make::Kind::fills)) return;
  DrawnAsked asked{piece, outline->text, outline->at, item.word("outline is").value.value_or("seam line") == "cut line", {}};
  if (const auto square = item.length("square measures"); square.known()) asked.square_measures = *square;
  piece.drawn = drawn_piece(asked, *file.drawings, file.diag);
  if (!piece.drawn) return;
  const Box box = bounds(piece.drawn->cut);
  for (Size* size : {&piece.width, &piece.length}) {
    size->kind = Size::Kind::cut;
    size->value = size == &piece.width ? box.height : box.width;
    size->at = outline->at;
  }
}

}  // namespace

void fill_edges(const Item& item, std::string_view key, std::map<std::string, Given<Length>>& edges) {
  const Entry* map = item.at(key);
  if (map == nullptr || map->kind != Entry::Kind::block) return;
  for (const Entry& edge : map->children) {
    const auto read = read_length(edge.text, edge.key);
    if (edge.kind == Entry::Kind::text && read.ok())
      edges[clean_name(edge.key)] = Given<Length>::written(read.value().length, edge.at);
  }
}

Given<PartOf> part_of_piece(const Item& item, const Named& named) {
  Given<PartOf> part = choice(item.word("part of"), PartOf::trimming);
  if (part.known() || item.has("part of")) return part;
  for (const PartWord& w : kPartWords)
    if (has_word(named.name, w.word)) return Given<PartOf>::guessed(w.part, "its name", named.at);
  return part;
}

void fill_pieces(const Filling& file, Project& project) {
  const Item garment = file.root.block("allowances");
  const std::optional<SkirtHem> skirt_hem = project.skirt ? project.skirt->hem : std::nullopt;
  for (const Item& item : file.root.items("pieces")) {
    Piece piece;
    piece.named = named_of(file, item, "pieces", "piece");
    piece.part_of = part_of_piece(item, piece.named);
    piece.from = names_in(file, item, "from", "cloths");
    if (const Entry* from = item.at("from")) piece.from_at = from->at;
    piece.make = make_made(file, item, piece.named.name, project);
    piece.width = size_made(file, item, piece.named.name, "width", project);
    piece.length = size_made(file, item, piece.named.name, "length", project);
    if (piece.width.kind == Size::Kind::unknown && piece.make.known() &&
        (piece.make->kind == Make::Kind::joined_round || piece.make->kind == Make::Kind::fills))
      piece.width.kind = Size::Kind::full_width;
    check_sizes(file, item, piece);
    piece.on_fold = item.yes_no("on fold");
    if (!piece.on_fold.known()) piece.on_fold = Given<bool>::standing(false, 'c', "not on a fold unless it is written");
    piece.grain = choice(item.word("grain"), Grain::bias);
    if (!piece.grain.known()) piece.grain = Given<Grain>::standing(Grain::along, 'c', "length along the selvage");
    piece.lay = choice(item.word("lay"), LayRule::any_way);
    fill_allowances(item, garment, skirt_hem, piece);
    fill_edges(item, "edges", piece.edges);
    edges_made(file, item, piece, project);
    fill_edges(item, "edge allowances", piece.edge_allowances);
    piece.lining_longer_by = item.length("lining longer by");
    fill_joining(file, item, piece);
    piece.may_be_pieced =
        item.is_block("may be pieced") ? Given<bool>::written(true, item.at("may be pieced")->at) : item.yes_no("may be pieced");
    if (!piece.may_be_pieced.known())
      piece.may_be_pieced = piece.width.kind == Size::Kind::full_width
                                ? Given<bool>::guessed(true, "full widths are joined anyway", piece.width.at)
                                : Given<bool>::standing(false, 'c', "in one piece unless it is written");
    fill_outline(file, item, piece);
    fill_match(file, item, project, piece);
    project.pieces.push_back(std::move(piece));
  }
}

}  // namespace gownsheaf
