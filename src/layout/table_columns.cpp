#include "layout/table_columns.h"

#include <algorithm>

namespace gownsheaf {

namespace {

using Kind = Column::Kind;

struct Need {
  Length least, natural;  // of the column, padding included
  bool words = false, given = false;
};

struct Widest {
  Length word, line;
};  // what stays together; from one line end that must be to the next

Widest widest_of(const Text& text, const Bench& bench) {
  Widest widest;
  Pen word(bench.type.fonts()), line = word;
  const std::vector<TextPiece> pieces = pieces_of(text, Length::points(bench.scale().text), bench.scale());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const TextPiece& piece = pieces[i];
    const bool line_starts = i == 0 || piece.must_break, word_starts = line_starts || piece.may_break;
    if (word_starts) word = Pen(bench.type.fonts());
    else word.lead(piece);
    if (line_starts) line = Pen(bench.type.fonts());
    else line.lead(piece);
    word.piece(piece, bench.scale());
    line.piece(piece, bench.scale());
    widest = {std::max(widest.word, word.at()), std::max(widest.line, line.at())};
  }
  return widest;
}

Length padding_of(const Table& table, std::size_t k, const Bench& bench) {
  if (k + 1 == table.columns.size()) return Length();  // none at the outer edges
  const double own = table.columns[k].padding;
  return pt(own >= 0 ? own : bench.either(10, 8));
}

// Splits "about 2.7 lb" before the point, or behind the last digit when there is none.
void part_at_point(NumberCell& cell, const Text& text) {
  std::size_t item = text.size(), place = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const std::string& s = text[i].words;
    for (std::size_t k = 0; k < s.size(); ++k) {
      const bool digit = s[k] >= '0' && s[k] <= '9';
      if (!digit) continue;
      item = i;
      place = k + 1;
      if (place < s.size() && s[place] == '.') break;
    }
    if (item == i && place < s.size() && s[place] == '.') break;
  }
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i != item) {
      (i < item ? cell.whole : cell.fraction).push_back(text[i]);
      continue;
    }
    Inline left = text[i], right = text[i];
    left.words = text[i].words.substr(0, place);
    right.words = text[i].words.substr(place);
    cell.whole.push_back(left);
    if (!right.words.empty()) cell.fraction.push_back(right);
  }
  cell.has_fraction = !cell.fraction.empty();
  cell.joined = text;
}

}  // namespace

double number_size(const Column& column, const TypeScale& scale) {
  return column.kind == Kind::estimate ? scale.text : scale.length;
}

bool aligns_numbers(Kind kind) { return kind == Kind::length || kind == Kind::count || kind == Kind::estimate; }

NumberCell number_cell(const Column& column, const Cell& cell, bool all_bold) {
  NumberCell parts;
  const Text text = column.bold || all_bold ? made_bold(cell.text) : cell.text;
  if (column.kind == Kind::estimate) {
    part_at_point(parts, text);
    return parts;
  }
  const auto is_length = [](const Inline& item) { return item.kind == Inline::Kind::length; };
  const auto length = std::find_if(text.begin(), text.end(), is_length);
  if (length == text.end()) {
    // A count or a sign such as –; a tag may stand before it too.
    const auto is_words = [](const Inline& item) { return item.kind == Inline::Kind::words; };
    const auto first = std::find_if(text.begin(), text.end(), is_words);
    parts.before.assign(text.begin(), first);
    parts.whole.assign(first, text.end());
    return parts;
  }
  parts.before.assign(text.begin(), length);
  Inline whole = *length, fraction = *length;
  whole.size = fraction.size = Inline::Size::as_text;
  parts.has_fraction = !length->length.numerator.empty();
  whole.length.numerator.clear();
  whole.length.denominator.clear();
  whole.length.unit.clear();
  fraction.length.negative = false;
  fraction.length.whole.clear();
  fraction.length.unit.clear();
  if (!whole.length.whole.empty() || whole.length.negative) parts.whole.push_back(whole);
  if (parts.has_fraction) parts.fraction.push_back(fraction);
  if (!whole.length.whole.empty() && parts.has_fraction) {
    Inline number = fraction;
    number.length.negative = whole.length.negative;
    number.length.whole = whole.length.whole;
    parts.joined.push_back(number);
  }
  if (!length->length.unit.empty()) parts.after = condensed(length->length.unit);
  if (length + 1 != text.end()) parts.after = parts.after + words(" ") + Text(length + 1, text.end());
  return parts;
}

NumberWidths widths_of(const NumberCell& cell, const Column& column, const Bench& bench) {
  const double size = number_size(column, bench.scale());
  const Typesetter& type = bench.type;
  NumberWidths widths;
  widths.left = type.width(cell.whole, size);
  if (!cell.before.empty()) widths.left += type.width(cell.before) + kPartGap;
  if (cell.has_fraction) {
    widths.slot = type.width(cell.fraction, size);
    if (column.kind != Kind::estimate) widths.slot += squeezed_space(pt(size));
  }
  if (!cell.after.empty()) widths.after = type.width(cell.after) + kPartGap;
  return widths;
}

namespace {

Need need_of(const Table& table, std::size_t k, const Bench& bench, ColumnPlace& place) {
  const Column& column = table.columns[k];
  const Length padding = padding_of(table, k, bench);
  const Widest head = widest_of(with_faces(column.head, Face::condensed_bold), bench);
  Need need{head.word, head.line, column.kind == Kind::words, column.width > 0};
  place.number = aligns_numbers(column.kind);
  Length left;
  for (const Row& row : table.rows) {
    if (row.kind == Row::Kind::group || k >= row.cells.size()) continue;
    const bool bold_row = row.kind == Row::Kind::total;
    if (place.number) {
      const NumberWidths widths = widths_of(number_cell(column, row.cells[k], bold_row), column, bench);
      left = std::max(left, widths.left);
      place.slot = std::max(place.slot, widths.slot);
      place.after = std::max(place.after, widths.after);
      continue;
    }
    if (column.kind == Kind::tick) {
      need.least = std::max(need.least, pt(std::min(bench.scale().tick_box, 15.0)));
      need.natural = std::max(need.natural, need.least);
      continue;
    }
    const Text& text = row.cells[k].text;
    const Widest widest = widest_of(column.bold || bold_row ? made_bold(text) : text, bench);
    need.least = std::max(need.least, widest.word);
    need.natural = std::max(need.natural, widest.line);
  }
  if (place.number) {
    // The head ends with the slot, so what stands behind the slot comes on top.
    need.least = std::max(need.least, left + place.slot) + place.after;
    need.natural = std::max(need.natural + place.after, need.least);
  }
  need.least += padding;
  need.natural += padding;
  if (need.given) {
    const Length given = pt(column.width);
    need.natural = need.words ? given : std::max(given, need.least);
    need.least = std::min(need.least, need.natural);
  }
  return need;
}

// Shares `room` among the columns that `takes` names: all get their least and the same part of what they would like more.
template <class Takes>
void shrink(std::vector<Length>& widths, const std::vector<Need>& needs, Length room, Takes takes) {
  Length least, natural;
  for (std::size_t k = 0; k < needs.size(); ++k) {
    if (!takes(needs[k])) continue;
    least += needs[k].least;
    natural += needs[k].natural;
  }
  for (std::size_t k = 0; k < needs.size(); ++k) {
    if (!takes(needs[k])) continue;
    if (room < least) {
      widths[k] = room <= Length() ? Length() : needs[k].least.times(room.in_ticks(), least.in_ticks(), Rounding::down);
    } else {
      const Length wish = needs[k].natural - needs[k].least;
      widths[k] = needs[k].least;
      if (natural > least) {
        widths[k] += wish.times((room - least).in_ticks(), (natural - least).in_ticks(), Rounding::down);
      }
    }
  }
}

std::vector<Length> share(const std::vector<Need>& needs) {
  std::vector<Length> widths;
  Length fixed, free_least, free_natural, all;
  std::int64_t free_words = 0, free_all = 0;
  for (const Need& need : needs) {
    widths.push_back(need.natural);
    all += need.natural;
    if (need.given) {
      fixed += need.natural;
    } else {
      free_least += need.least;
      free_natural += need.natural;
      ++free_all;
      if (need.words) ++free_words;
    }
  }
  if (all <= kLiveWidth) {
    const std::int64_t takers = free_words > 0 ? free_words : free_all;
    if (takers == 0) return widths;
    const Length more = (kLiveWidth - all).times(1, takers, Rounding::down);
    for (std::size_t k = 0; k < needs.size(); ++k) {
      if (!needs[k].given && (free_words == 0 || needs[k].words)) widths[k] += more;
    }
  } else if (fixed + free_least <= kLiveWidth) {
    shrink(widths, needs, kLiveWidth - fixed, [](const Need& need) { return !need.given; });
  } else {
    shrink(widths, needs, kLiveWidth, [](const Need&) { return true; });
  }
  return widths;
}

}  // namespace

std::vector<ColumnPlace> place_columns(const Table& table, const Bench& bench) {
  std::vector<ColumnPlace> places(table.columns.size());
  std::vector<Need> needs;
  for (std::size_t k = 0; k < places.size(); ++k) needs.push_back(need_of(table, k, bench, places[k]));
  const std::vector<Length> widths = share(needs);
  Length x;
  for (std::size_t k = 0; k < places.size(); ++k) {
    places[k].x = x;
    places[k].content = std::max(Length(), widths[k] - padding_of(table, k, bench));
    // Squeezed below its least, a column cannot align any more: its numbers wrap like words.
    if (widths[k] < needs[k].least) places[k].number = false;
    x += widths[k];
  }
  return places;
}

}  // namespace gownsheaf
