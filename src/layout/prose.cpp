// Titles, headings, running text, and the white and rules between them.
#include <algorithm>

#include "layout/slab.h"
#include "unicode/utf8.h"

namespace gownsheaf {

namespace {

// At most 68 letters a line, a letter being 0.42 em in the mean.
Length longest_line(double size) { return std::min(kLiveWidth, pt(size * 0.42 * 68)); }

double title_pitch(const Bench& bench) { return bench.scale().title_step - bench.either(6, 4); }

}  // namespace

Length Bench::capital(double size) const { return pt(size).times(type.fonts().metrics(Face::regular).cap_height, 1000); }

void set_lines(std::vector<Mark>& marks, const Bench& bench, const std::vector<Text>& lines, Point at, Length pitch,
               double size) {
  for (const Text& line : lines) {
    for (Mark& mark : bench.type.set(line, at, size)) marks.push_back(std::move(mark));
    at.y += pitch;
  }
}

void set_ending_at(std::vector<Mark>& marks, const Bench& bench, const Text& line, Point end, double size) {
  set_lines(marks, bench, {line}, {end.x - bench.type.width(line, size), end.y}, Length(), size);
}

std::vector<Text> caption_lines(const Bench& bench, const Text& text, Length room, double size) {
  std::vector<Text> lines = bench.type.lines(text, kLiveWidth, size);
  return lines.size() <= 1 ? lines : bench.type.lines(text, room, size);
}

Text with_faces(Text text, Face face) {
  for (Inline& item : text) item.face = face;
  return text;
}

Text closer(Text text, const Bench& bench) {
  if (bench.close != Closeness::condensed) return text;
  for (Inline& item : text) {
    if (item.kind == Inline::Kind::words && item.face == Face::regular) item.face = Face::condensed;
  }
  return text;
}

Text made_bold(Text text) {
  for (Inline& item : text) {
    if (item.face == Face::regular) item.face = Face::bold;
    if (item.face == Face::condensed) item.face = Face::condensed_bold;
  }
  return text;
}

Text cut_to_width(const Bench& bench, const std::string& words, Face face, Length room, double size) {
  const auto in_face = [&](std::string s) { return with_faces(gownsheaf::words(std::move(s)), face); };
  if (bench.type.width(in_face(words), size) <= room) return in_face(words);
  std::vector<char32_t> letters = decode_utf8(words);
  while (!letters.empty()) {
    letters.pop_back();
    while (!letters.empty() && letters.back() == U' ') letters.pop_back();
    std::string shorter;
    for (char32_t c : letters) shorter += encode_utf8(c);
    const Text text = in_face(shorter + "\xE2\x80\xA6");
    if (bench.type.width(text, size) <= room) return text;
  }
  return {};
}

Slabs title_slabs(const Sheet& sheet, const Bench& bench) {
  const TypeScale& scale = bench.scale();
  Slabs slabs;
  Slab title;
  const std::vector<Text> lines = bench.type.lines(bold(sheet.title), kLiveWidth, scale.title);
  const Length pitch = pt(title_pitch(bench));
  if (!sheet.anchor.empty()) title.marks.push_back({AnchorMark{sheet.anchor, Point{}}});
  set_lines(title.marks, bench, lines, {Length(), bench.base(scale.title_step, scale.title)}, pitch, scale.title);
  const std::int64_t more = std::max<std::int64_t>(0, static_cast<std::int64_t>(lines.size()) - 1);
  title.height = Length::points(scale.title_step) + pitch * more;
  title.keep = Slab::Keep::hard;
  for (std::int64_t k = 0; k < more; ++k) title.cuts.push_back(Length::points(scale.title_step) + pitch * k);
  slabs.push_back(std::move(title));
  if (!sheet.answer.empty()) {
    Slab answer;
    const std::vector<Text> sentences = caption_lines(bench, sheet.answer, longest_line(scale.answer), scale.answer);
    const Length step = Length::points(scale.answer_step);
    set_lines(answer.marks, bench, sentences, {Length(), bench.base(scale.answer_step, scale.answer)}, step, scale.answer);
    const std::int64_t count = static_cast<std::int64_t>(sentences.size());
    answer.height = step * count;
    for (std::int64_t k = 1; k < count; ++k) answer.cuts.push_back(step * k);
    answer.keep = Slab::Keep::hard;
    answer.changed = any_changed(sheet.answer);
    slabs.push_back(std::move(answer));
  }
  return slabs;
}

Slab continued_slab(const Sheet& sheet, const Bench& bench) {
  const TypeScale& scale = bench.scale();
  Slab slab;
  const std::string ending = ", continued";
  const Length room = kLiveWidth - bench.type.width(bold(ending), scale.heading);
  const Text title = cut_to_width(bench, sheet.title, Face::bold, room, scale.heading) + bold(ending);
  set_lines(slab.marks, bench, {title}, {Length(), bench.base(scale.heading_step, scale.heading)}, Length(), scale.heading);
  slab.height = Length::points(scale.heading_step) + pt(bench.either(10, 6));
  return slab;
}

// Pin-up: rule 2.0 above, 9 space, words, 7 space, rule 0.7. In the binder the rule 2.0 parts sheets that share a page,
// so a heading inside one is words alone.
Slabs slabs_of(const Heading& heading, const Bench& bench) {
  const TypeScale& scale = bench.scale();
  const std::vector<Text> lines = bench.type.lines(made_bold(heading.text), kLiveWidth, scale.heading);
  const Length pitch = Length::points(scale.heading_step);
  const double loose = bench.tight() ? 0.6 : 1;
  const Length above = pt(bench.either(kHeavyRule / 2 + 9 * loose, 0)), below = pt(bench.either(7 * loose, 3 * loose));
  Slab slab;
  set_lines(slab.marks, bench, lines, {Length(), above + bench.base(scale.heading_step, scale.heading)}, pitch, scale.heading);
  slab.height = above + pitch * static_cast<std::int64_t>(lines.size()) + below;
  for (std::size_t k = 1; k < lines.size(); ++k) slab.cuts.push_back(above + pitch * static_cast<std::int64_t>(k));
  if (bench.pin_up()) {
    slab.rule_above = slab.rule_at_top = kHeavyRule;
    slab.marks.push_back(level_line(Length(), kLiveWidth, slab.height, scale.row_rule));
  }
  slab.space_before = pt(bench.either(16 * loose, 10 * loose));
  slab.keep = Slab::Keep::hard;
  return {slab};
}

Slabs slabs_of(const Paragraph& paragraph, const Bench& bench) {
  const Length room = paragraph.wide ? kLiveWidth : Length::points(bench.scale().text_width);
  const std::vector<Text> lines = caption_lines(bench, paragraph.wide ? closer(paragraph.text, bench) : paragraph.text, room);
  if (lines.empty()) return {};
  Slab slab;
  set_lines(slab.marks, bench, lines, {Length(), bench.text_base()}, bench.step());
  slab.height = bench.step() * static_cast<std::int64_t>(lines.size());
  for (std::size_t k = 1; k < lines.size(); ++k) slab.cuts.push_back(bench.step() * static_cast<std::int64_t>(k));
  slab.changed = any_changed(paragraph.text);
  slab.space_before = pt(bench.tight() ? bench.either(3, 2) : bench.either(6, 4));
  return {slab};
}

Slabs slabs_of(const Gap& gap, const Bench& bench) {
  if (gap.points <= 0) return {};
  Slab slab;
  slab.gap = true;
  slab.height = pt(bench.tight() ? gap.points / 2 : gap.points);
  return {slab};
}

Slabs slabs_of(const Rule& rule, const Bench& bench) {
  Slab slab;
  const Length space = pt(bench.either(8, 6));
  slab.height = space + pt(rule.weight) + space;
  slab.marks.push_back(level_line(Length(), kLiveWidth, slab.height.times(1, 2), rule.weight));
  return {slab};
}

}  // namespace gownsheaf
