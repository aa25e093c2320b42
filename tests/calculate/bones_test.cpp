// Bones: the rule of each kind, casing, and what is cut from which stock length.
#include "calculate/bones.h"

#include "support/catch.h"

using namespace gownsheaf;

namespace {

constexpr Length in64(std::int64_t n) { return Length::sixty_fourths(n); }

Project with(BoneKind kind, Length channel, std::int64_t number = 1) {
  Project project;
  project.show_lengths_in = Given<ShownIn>::written(ShownIn::inches, {});
  BoneStock stock;
  stock.named.name = "stock";
  stock.kind = kind;
  stock.sold_as = {Length::inches(36)};
  stock.may_be_cut = Given<bool>::written(true, {});
  stock.casing_ends = Given<Length>::standing(Length::inches(1), 'a', "");
  project.bone_stock.push_back(stock);
  Bone bone;
  bone.named.name = "side";
  bone.number = number;
  bone.channel_length = Given<Length>::written(channel, {});
  bone.stock = "stock";
  project.bones.push_back(bone);
  return project;
}

Length bone_of(const Project& project) {
  Figures figures;
  Diagnostics diag;
  add_bones(project, figures, diag);
  REQUIRE(diag.in_order_found().empty());
  return *figures.length("bones/side/bone length");
}

}  // namespace

TEST_CASE("[K01] [K02] a: bone from casing, by its kind", "[bones][published]") {
  // Baldt, Clothing for Women (1916): casing 8 in, bone 7 1/2 in. Ingalls, Text-Book on Domestic Art (about 1911): featherbone
  // for 8 in finished is cut 8 1/2 in. Steel: 1/4 in clear at each end, common practice.
  CHECK(bone_of(with(BoneKind::whalebone, Length::inches(8))) == Length::inches(7) + in64(32));
  CHECK(bone_of(with(BoneKind::featherbone, Length::inches(8))) == Length::inches(8) + in64(32));
  CHECK(bone_of(with(BoneKind::flat_steel, Length::inches(8))) == Length::inches(7) + in64(32));
  // By the maker's rule for every kind: Baldt's, or Ingalls', which only featherbone can follow.
  Project ruled = with(BoneKind::featherbone, Length::inches(8));
  ruled.rules.bone_length_is = Given<BoneLengthIs>::written(BoneLengthIs::casing_less, {});
  CHECK(bone_of(ruled) == Length::inches(7) + in64(32));
  CHECK(usual_difference(BoneKind::whalebone, BoneLengthIs::casing_and_more) == in64(32));
  Project clear = with(BoneKind::whalebone, Length::inches(8));
  clear.bones.front().end_clear = Given<Length>::written(in64(8), {});
  CHECK(bone_of(clear) == Length::inches(7) + in64(48));
}

TEST_CASE("the total: 9, twice 8 1/2, 8, 7 and 6 1/2, and 13 in of channel, ten featherbones turned in 1/2 in: 82 + 5 in",
          "[bones]") {
  Project project = with(BoneKind::featherbone, Length::inches(9));
  const auto add = [&](Length channel, std::int64_t number) {
    Bone bone = project.bones.front();
    bone.named.name = "channel " + std::to_string(project.bones.size());
    bone.channel_length = Given<Length>::written(channel, {});
    bone.number = number;
    project.bones.push_back(bone);
  };
  add(Length::inches(8) + in64(32), 2);
  add(Length::inches(8), 2);
  add(Length::inches(7), 2);
  add(Length::inches(6) + in64(32), 2);
  add(Length::inches(13), 1);
  Figures figures;
  Diagnostics diag;
  add_bones(project, figures, diag);
  CHECK(figures.length("bone stock/stock/total length") == Length::inches(87));
}

TEST_CASE("ten bones from two lengths where the longest first takes three", "[bones]") {
  // By hand: 10 1/2 + 7 + 6 1/2 + 6 + 6 = 36 in, twice; channels half an inch longer.
  Project project = with(BoneKind::synthetic_whalebone, Length::inches(11), 2);
  const auto add = [&](const char* name, Length channel, std::int64_t number) {
    Bone bone = project.bones.front();
    bone.named.name = name;
    bone.channel_length = Given<Length>::written(channel, {});
    bone.number = number;
    project.bones.push_back(bone);
  };
  add("seam", Length::inches(7) + in64(32), 2);
  add("back", Length::inches(7), 2);
  add("dart", Length::inches(6) + in64(32), 4);
  Figures figures;
  Diagnostics diag;
  const auto plans = add_bones(project, figures, diag);
  REQUIRE(plans.size() == 1);
  CHECK(plans[0].bars.size() == 2);
  CHECK(plans[0].proven);
  CHECK(figures.length("bone stock/stock/total length") == Length::inches(72));
  CHECK(figures.count("bone stock/stock/to buy 1") == 2);
  CHECK(figures.length("bone stock/stock/bar 1/left") == Length{});
}

TEST_CASE("casing is each channel and its ends, cut from what was bought", "[bones]") {
  Project project = with(BoneKind::whalebone, Length::inches(10), 3);
  Notion tape;
  tape.named.name = "tape";
  tape.kind = "tape";
  tape.bought_lengths = Given<std::vector<Length>>::written({Length::inches(22), Length::inches(11)}, {});
  project.notions.push_back(tape);
  project.bones.front().casing = "tape";
  Figures figures;
  Diagnostics diag;
  add_bones(project, figures, diag);
  CHECK(figures.length("notions/tape/casing needed") == Length::inches(33));  // 3 x (10 + 1)
  CHECK(diag.in_order_found().empty());                                       // 22 holds two, 11 one
  project.notions.front().bought_lengths = Given<std::vector<Length>>::written({Length::inches(20), Length::inches(20)}, {});
  Figures again;
  add_bones(project, again, diag);
  REQUIRE(diag.in_order_found().size() == 1);
  CHECK(diag.in_order_found().front().code == "casing-short");
}
