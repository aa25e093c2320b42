// Garments put together by hand, for tests of calculators: what check/ would have made of a project file.
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "project/project.h"

namespace garment {

using namespace gownsheaf;

inline Length in(std::int64_t n) { return Length::inches(n); }
inline Length in(std::int64_t n, std::int64_t d) { return Length::inches(1).times(n, d); }  // n/d of an inch
inline Length cm(std::int64_t n) { return Length::cm(n); }
inline Length mm(std::int64_t n) { return Length::mm(n); }

template <class T>
Given<T> said(T value) {
  return Given<T>::written(std::move(value), {});
}

inline Named named(const std::string& name) {
  Named n;
  n.name = name;
  return n;
}

inline Project project(ShownIn shown) {
  Project p;
  p.file = "test.yaml";
  p.show_lengths_in = said(shown);
  return p;
}

inline Cloth cloth(const std::string& name, Length width, Length selvage) {
  Cloth c;
  c.named = named(name);
  c.width = said(width);
  c.selvage = said(selvage);
  c.straighten = said(Length{});
  return c;
}

inline std::vector<BoughtLength> lengths(const std::vector<Length>& all) {
  std::vector<BoughtLength> out;
  for (const Length l : all) {
    BoughtLength b;
    b.length = l;
    out.push_back(b);
  }
  return out;
}

inline Size finished(Length l) { return {Size::Kind::finished, l, {}}; }
inline Size cut(Length l) { return {Size::Kind::cut, l, {}}; }
inline Size full_width() { return {Size::Kind::full_width, {}, {}}; }

inline Make make(std::int64_t number) { return {Make::Kind::number, number, {}, ""}; }
inline Make pairs(std::int64_t number) { return {Make::Kind::pairs, number, {}, ""}; }
inline Make fills(const std::string& what) { return {Make::Kind::fills, 1, {}, what}; }
inline Make reaching(Length round) { return {Make::Kind::joined_round, 1, round, ""}; }

inline Piece piece(const std::string& name, PartOf part, const std::vector<std::string>& from, Make number, Size width,
                   Size length) {
  Piece p;
  p.named = named(name);
  p.part_of = said(part);
  p.from = from;
  p.make = said(std::move(number));
  p.width = width;
  p.length = length;
  return p;
}

inline Piece& allow(Piece& p, Length seam, Length hem, Length top) {
  p.seam_allowance = said(seam);
  p.hem = said(hem);
  p.top = said(top);
  return p;
}

inline PleatRun run(const std::string& name, PleatKind kind, const std::vector<std::string>& of) {
  PleatRun r;
  r.named = named(name);
  r.kind = kind;
  r.of = of;
  return r;
}

// Twelve lines: a linen skirt of two breadths, 22 knife pleats into 76 cm.
inline Project linen_skirt() {
  Project p = project(ShownIn::centimetres);
  Cloth linen = cloth("blue linen", cm(140), cm(1));
  linen.straighten = Given<Length>::standing(in(2), 'c', "the program's default");
  linen.shrinks_along = said(Percent{Ratio::of(5, 100)});
  linen.bought = said(lengths({cm(250)}));
  p.cloths.push_back(linen);
  Piece breadth = piece("skirt breadth", PartOf::skirt, {"blue linen"}, make(2), full_width(), finished(cm(98)));
  p.pieces.push_back(allow(breadth, mm(15), cm(6), mm(15)));
  Piece band = piece("waistband", PartOf::band, {"blue linen"}, make(1), finished(cm(80)), finished(cm(8)));
  band.seam_allowance = said(mm(15));
  p.pieces.push_back(band);
  PleatRun waist = run("waist", PleatKind::knife, {"skirt breadth"});
  waist.finished = said(cm(76));
  waist.count = said<std::int64_t>(22);
  p.pleats.push_back(waist);
  return p;
}

// The skirt of a wool day dress: three breadths, a flat front, knife pleats at the sides, the rest gauged at the back,
// over a muslin interlining that fills the same round.
inline Project day_dress() {
  Project p = project(ShownIn::inches);
  Cloth wool = cloth("slate wool", in(58), in(1, 2));
  wool.straighten = said(in(2));
  wool.shrinks_along = said(Percent{Ratio::of(3, 100)});
  wool.sold_by = said(in(9, 2));
  wool.bought = said(lengths({in(207)}));
  p.cloths.push_back(wool);
  Cloth muslin = cloth("white muslin", in(45), in(1, 2));
  muslin.used_as = said(UsedAs::interlining);
  muslin.straighten = said(in(2));
  muslin.shrinks_along = said(Percent{Ratio::of(5, 100)});
  muslin.bought = said(lengths({in(207)}));
  p.cloths.push_back(muslin);
  const Length seam = in(5, 8);
  Piece front = piece("bodice front", PartOf::bodice, {"slate wool"}, pairs(1), finished(in(21, 2)), finished(in(17)));
  front.seam_allowance = said(seam);
  p.pieces.push_back(front);
  Piece back = piece("bodice back", PartOf::bodice, {"slate wool"}, make(1), finished(in(15, 2)), finished(in(33, 2)));
  back.seam_allowance = said(seam);
  back.on_fold = said(true);
  p.pieces.push_back(back);
  Piece sleeve = piece("upper sleeve", PartOf::sleeve, {"slate wool"}, pairs(1), finished(in(8)), finished(in(47, 2)));
  sleeve.seam_allowance = said(seam);
  p.pieces.push_back(sleeve);
  Piece breadth = piece("skirt breadth", PartOf::skirt, {"slate wool"}, make(3), full_width(), finished(in(42)));
  p.pieces.push_back(allow(breadth, seam, in(3), in(3, 2)));
  Piece under = piece("skirt interlining", PartOf::skirt, {"white muslin"}, fills("whole skirt"), Size{}, finished(in(42)));
  p.pieces.push_back(allow(under, seam, in(3), in(3, 2)));
  PleatRun flat = run("front", PleatKind::plain, {"skirt breadth"});
  flat.half = true;
  flat.flat = said(in(2));
  flat.finished = said(in(2));
  PleatRun sides = run("sides", PleatKind::knife, {"skirt breadth"});
  sides.half = true;
  sides.finished = said(in(5));
  sides.depth = said(in(3, 2));
  sides.count = said<std::int64_t>(5);
  sides.toward = said(Toward::centre_back);
  PleatRun gauged = run("back", PleatKind::cartridge, {"skirt breadth"});
  gauged.half = true;
  gauged.finished = said(in(6));
  gauged.flat_is_the_rest = true;
  p.pleats = {flat, sides, gauged};
  Round round;
  round.named = named("whole skirt");
  round.of = {"skirt breadth"};
  round.runs = {"front", "sides", "back"};
  round.finished = said(in(26));
  p.rounds.push_back(round);
  return p;
}

}  // namespace garment
