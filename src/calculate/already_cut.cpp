// Pieces that are cut and no longer what is wanted.
#include <algorithm>

#include "calculate/new_figure.h"
#include "calculate/what_changed.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

// Whether the step, marked done, cut this piece from this cloth. Steps of a whole cloth name it alone; full breadths and
// the other pieces have a step each.
bool cut_by(std::string_view step, const std::string& piece, const std::string& cloth, bool full_width,
            const Templates& templates, const Project& project) {
  const auto at = step.find('@');
  const std::string_view id = step.substr(0, at);
  const Step* known = templates.step(id);
  if (known == nullptr || known->cannot_undo != kCannotUndo[0]) return false;
  if (at == std::string_view::npos) return true;  // all items of the step
  bool names_piece = false, names_cloth = false;
  for (std::size_t from = at + 1; from <= step.size();) {
    const std::size_t plus = std::min(step.find('+', from), step.size());
    const std::string_view item = step.substr(from, plus - from);
    if (project.cloth(item) != nullptr ? same_name(item, cloth) : false) names_cloth = true;
    else if (same_name(item, piece)) names_piece = true;
    else return false;
    from = plus + 1;
  }
  if (names_piece) return true;
  if (!names_cloth) return false;
  if (id == "cut-breadths") return full_width;
  if (id == "cut-pieces") return !full_width;
  return true;
}

// How far a printed size moved: what the maker cut by against what she would cut by now.
Length moved(const Figure& was, const Figure& is, ShownIn in) {
  const Length step = cut_step(in);
  return std::get<Length>(is.value).to_step(step, Rounding::up) - std::get<Length>(was.value).to_step(step, Rounding::up);
}

struct Sized {
  std::optional<Length> across, along;
  std::int64_t copies = 0;
  bool is_private = false;
};

Sized moved_sizes(const std::string& key, const Changes& changes, ShownIn in) {
  Sized sized;
  for (const Change& c : changes.all) {
    if (c.kind != Change::Kind::altered || c.key.compare(0, key.size() + 1, key + "/") != 0) continue;
    const std::string what = c.key.substr(key.size() + 1);
    const bool lengths = std::holds_alternative<Length>(c.was->value) && std::holds_alternative<Length>(c.is->value);
    if (what == "cut width" && lengths) sized.across = moved(*c.was, *c.is, in);
    else if (what == "cut length" && lengths) sized.along = moved(*c.was, *c.is, in);
    else if (what == "copies" && std::holds_alternative<std::int64_t>(c.was->value) &&
             std::holds_alternative<std::int64_t>(c.is->value))
      sized.copies = std::get<std::int64_t>(c.is->value) - std::get<std::int64_t>(c.was->value);
    else continue;
    sized.is_private = sized.is_private || c.is_private;
  }
  return sized;
}

std::string joined(const std::vector<std::string>& words) { return words.size() == 2 ? words[0] + " and " + words[1] : words[0]; }

// "1/2 in too narrow and 1 in too short"; empty when nothing of that sort is.
std::string by_how_much(const Sized& s, bool small, ShownIn in) {
  std::vector<std::string> words;
  const auto add = [&](const std::optional<Length>& by, const char* too_small, const char* too_large) {
    if (!by || by->is_zero() || (*by > Length()) != small) return;
    const Length size = small ? *by : -*by;
    words.push_back(text_of(size, in, cut_step(in), Rounding::nearest).plain() + (small ? too_small : too_large));
  };
  add(s.across, " too narrow", " too wide");
  add(s.along, " too short", " too long");
  return words.empty() ? "" : joined(words);
}

class Teller {
 public:
  Teller(const Project& project, Changes& changes, Diagnostics& diag) : project_(project), changes_(changes), diag_(diag) {}

  void tell(CutAlready cut) {
    const bool stops = cut.kind == CutAlready::Kind::too_small || cut.kind == CutAlready::Kind::wanted_more;
    const Piece* piece = project_.piece(cut.piece);
    diag_.add(message({cut.piece, "pieces", "", cut.is_private}, stops ? Severity::hold : Severity::warning, "already-cut",
                      piece != nullptr ? piece->named.at : project_.title_at, cut.sentence, cut.what_to_do));
    changes_.cut.push_back(std::move(cut));
  }

 private:
  const Project& project_;
  Changes& changes_;
  Diagnostics& diag_;
};

}  // namespace

void add_already_cut(const Project& project, const Templates& templates, const Plans& plans, const OlderFigures& older,
                     const Figures& today, Changes& changes, Diagnostics& diag) {
  const ShownIn in = shown_in(project);
  const Renamed renamed = renamed_items(project);
  Teller teller(project, changes, diag);
  // The step, marked done, that cut the piece; "" when it is not cut.
  const auto step_that_cut = [&](const std::string& piece, const std::string& cloth, bool full_width) {
    for (const DoneStep& done : project.work.done)
      if (cut_by(done.step, piece, cloth, full_width, templates, project)) return done.step;
    return std::string();
  };
  std::vector<CutAlready> told;
  for (const LayPlan& lay : plans.lays)
    for (const CutPiece& c : lay.cut) {
      const std::string step = step_that_cut(c.as_named(), c.cloth, c.full_width);
      if (step.empty()) continue;
      Sized sized = moved_sizes(c.key, changes, in);
      if (c.full_width) sized.across.reset();  // selvage to selvage, however wide the cloth turned out to be
      const std::string is = capital(c.piece) +
                             (c.copies > 2    ? " (all " + whole_number(c.copies) + ")"
                              : c.copies == 2 ? " (both)"
                                              : "") +
                             " is cut from " + c.cloth + ", and ";
      const std::string small = by_how_much(sized, true, in), large = by_how_much(sized, false, in);
      if (!small.empty()) {
        std::string strip = sized.across && *sized.across > Length() ? "add a strip at the side" : "add a strip at the end";
        told.push_back({CutAlready::Kind::too_small, c.piece, c.cloth,
                        is + small + (large.empty() ? "" : ", also " + large) + ".", strip + ", or cut again", sized.is_private,
                        step});
      } else if (!large.empty()) {
        told.push_back({CutAlready::Kind::too_large, c.piece, c.cloth, is + large + ".", "mark the new cutting line and trim it",
                        sized.is_private, step});
      }
      const std::string of = " of " + c.piece + " from " + c.cloth;
      if (sized.copies > 0) {
        const std::string more = whole_number(sized.copies);
        told.push_back(
            {CutAlready::Kind::wanted_more, c.piece, c.cloth,
             "The cutting" + of + " is done, and " + more + " more " + (sized.copies == 1 ? "is" : "are") + " wanted now.",
             "cut " + more + " more", sized.is_private, step});
      } else if (sized.copies < 0) {
        const std::string fewer = whole_number(-sized.copies);
        told.push_back(
            {CutAlready::Kind::wanted_fewer, c.piece, c.cloth,
             "The cutting" + of + " is done, and " + fewer + " fewer " + (sized.copies == -1 ? "is" : "are") + " wanted now.",
             "keep what is left over for small pieces", sized.is_private, step});
      }
    }
  // A piece that is no more in a cloth whose cutting is done.
  for (const Change& c : changes.all) {
    if (c.kind != Change::Kind::gone || c.key.rfind("pieces/", 0) != 0) continue;
    const std::string ending = "/copies";
    if (c.key.size() < ending.size() || c.key.compare(c.key.size() - ending.size(), ending.size(), ending) != 0) continue;
    const std::string item = c.key.substr(7, c.key.size() - 7 - ending.size());
    const auto slash = item.find('/');
    if (slash == std::string::npos) continue;
    const std::string piece = item.substr(0, slash), cloth = item.substr(slash + 1);
    const std::string width_key = "pieces/" + item + "/cut width";
    bool full_width = false;  // as wide as its cloth was
    for (const Figure& f : older.figures.all())
      if (key_of_today(f.key, renamed) == width_key && std::holds_alternative<Length>(f.value)) {
        const Figure* wide = today.find("cloths/" + cloth + "/width");
        full_width = wide != nullptr && std::holds_alternative<Length>(wide->value) &&
                     std::get<Length>(wide->value) == std::get<Length>(f.value);
      }
    const std::string step = step_that_cut(piece, cloth, full_width);
    if (step.empty()) continue;
    told.push_back({CutAlready::Kind::unused, piece, cloth,
                    capital(piece) + " is cut from " + cloth + ", and no longer wanted of it.", "keep it for small pieces",
                    c.is_private, step});
  }
  // What does not serve comes first; what is left over last.
  std::stable_sort(told.begin(), told.end(), [](const CutAlready& a, const CutAlready& b) {
    const auto rank = [](const CutAlready& c) {
      return c.kind == CutAlready::Kind::too_small || c.kind == CutAlready::Kind::wanted_more ? 0
             : c.kind == CutAlready::Kind::too_large                                          ? 1
                                                                                              : 2;
    };
    return rank(a) < rank(b);
  });
  for (CutAlready& cut : told) teller.tell(std::move(cut));
}

}  // namespace gownsheaf
