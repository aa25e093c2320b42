// What the drawings of the load and of the bones print is what their figures say.
#include <algorithm>

#include "calculate/bones.h"
#include "calculate/closures.h"
#include "calculate/loads.h"
#include "packet/bone_drawing.h"
#include "packet/load_drawing.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/small_project.h"

using namespace gownsheaf;
using garment::in;
using garment::mm;

namespace {

std::vector<const Label*> labels_of(const Drawing& drawing) {
  std::vector<const Label*> labels;
  for (const DrawingItem& item : drawing.items)
    if (const auto* label = std::get_if<Label>(&item)) labels.push_back(label);
  return labels;
}

bool drawn_says(const Drawing& drawing, std::string wanted) {
  for (auto at = wanted.find("\u00A0"); at != std::string::npos; at = wanted.find("\u00A0")) wanted.replace(at, 2, " ");
  const auto labels = labels_of(drawing);
  return std::any_of(labels.begin(), labels.end(),
                     [&](const Label* l) { return plain(l->text).find(wanted) != std::string::npos; });
}

}  // namespace

TEST_CASE("each fastener's bar says its pull, and bars are as long as the pulls are", "[load]") {
  for (const ShownIn shown : {ShownIn::inches, ShownIn::centimetres}) {
    Project project = garment::project(shown);
    Closure closure;
    closure.named = garment::named("front");
    closure.length = garment::said(in(14));
    closure.number = garment::said(std::int64_t{9});
    closure.top_inset = closure.bottom_inset = garment::said(in(1, 4));
    closure.meets = garment::said(Meets::edge_to_edge);
    project.closures.push_back(closure);
    Strain strain;
    strain.closure = "front";
    strain.girth = garment::said(in(26));
    strain.worn = garment::said(std::string("snug"));
    strain.over = garment::said(std::string("corset"));
    strain.moves = garment::said(std::string("walking"));
    strain.breathes_at = garment::said(std::string("natural waist"));
    strain.skirt_hangs_from = garment::said(std::string("bodice waist"));
    strain.use_at_most = garment::said(Ratio{1, 2});
    project.strain.push_back(strain);
    Figures figures;
    Diagnostics diag;
    Plans plans;
    plans.closures = add_closures(project, figures, diag);
    const auto loads = add_loads(project, plans, Mass{2000}, figures, diag);
    REQUIRE(loads.size() == 1);
    CHECK(loads[0].band == "R2");
    const FigureText text(figures, shown);
    const gownsheaf::testing::SmallProject small;
    const Drawing drawing = draw_load(plans.closures[0], loads[0], text, Typesetter(small.font, small.scale));
    for (int k = 1; k <= 9; ++k) {
      INFO(k);
      CHECK(drawn_says(drawing, text.about("closures/front/pull " + std::to_string(k))));
      CHECK(drawn_says(drawing, plain_text(figures.at("closures/front/fastener " + std::to_string(k)), shown)));
    }
    // First and last have as much edge to themselves; the last carries the skirt as well.
    CHECK(loads[0].pulls.back().value > loads[0].pulls.front().value);
    CHECK(loads[0].pulls.front().value < loads[0].pulls[1].value);
  }
}

TEST_CASE("zones of the load drawing say their own pull, and begin where their figures say", "[load]") {
  for (const ShownIn shown : {ShownIn::inches, ShownIn::centimetres}) {
    Project project = garment::project(shown);
    Closure closure;
    closure.named = garment::named("front");
    closure.length = garment::said(in(16));
    closure.number = garment::said(std::int64_t{9});
    closure.top_inset = closure.bottom_inset = garment::said(Length{});
    closure.meets = garment::said(Meets::edge_to_edge);
    project.closures.push_back(closure);
    Strain strain;
    strain.closure = "front";
    strain.girth = garment::said(in(26));
    strain.worn = garment::said(std::string("snug"));
    strain.over = garment::said(std::string("corset"));
    strain.moves = garment::said(std::string("walking"));
    strain.breathes_at = garment::said(std::string("natural waist"));
    strain.skirt_hangs_from = garment::said(std::string("nothing"));
    strain.use_at_most = garment::said(Ratio{1, 2});
    StrainZone ribs;
    ribs.named = garment::named("ribs");
    ribs.ends = garment::said(in(8));
    ribs.girth = garment::said(in(32));
    ribs.worn = garment::said(std::string("easy"));
    ribs.breathes_at = garment::said(std::string("ribs"));
    strain.zones.push_back(ribs);
    project.strain.push_back(strain);
    Figures figures;
    Diagnostics diag;
    Plans plans;
    plans.closures = add_closures(project, figures, diag);
    const auto loads = add_loads(project, plans, std::nullopt, figures, diag);
    REQUIRE(loads.size() == 1);
    REQUIRE(loads[0].zones.size() == 2);
    const FigureText text(figures, shown);
    const gownsheaf::testing::SmallProject small;
    const Drawing drawing = draw_load(plans.closures[0], loads[0], text, Typesetter(small.font, small.scale));
    for (const char* zone : {"ribs", "rest of the edge"}) {
      CHECK(drawn_says(drawing, zone));
      CHECK(drawn_says(drawing, text.about("closures/front/zone " + std::string(zone) + "/line load")));
    }
    // The one dashed line lies as high as the fifth of nine fasteners, both 8 in down: its number is set there.
    Length dashed, fifth;
    for (const DrawingItem& item : drawing.items)
      if (const auto* stroke = std::get_if<StrokeMark>(&item); stroke != nullptr && !stroke->dash.empty())
        dashed = stroke->path.front().to.y;
    for (const Label* label : labels_of(drawing))
      if (plain(label->text) == "5") fifth = label->at.y;
    CHECK(dashed == fifth);
    // Bars are as long as the pulls: the widest of the lower part against one of the upper, to a thousandth of the longest.
    CHECK(loads[0].pulls[6].value > loads[0].pulls[1].value);
  }
}

TEST_CASE("the bone map and the bars say each bone's length", "[bones]") {
  for (const ShownIn shown : {ShownIn::inches, ShownIn::centimetres}) {
    Project project = garment::project(shown);
    BoneStock stock;
    stock.named = garment::named("quarter bone");
    stock.sold_as = {in(36)};
    stock.may_be_cut = garment::said(true);
    stock.casing_ends = garment::said(in(1));
    project.bone_stock.push_back(stock);
    const std::pair<const char*, Length> channels[] = {
        {"side", in(15, 2)}, {"back", in(7)}, {"dart", in(13, 2)}, {"front edge", in(11)}};
    for (const auto& [name, length] : channels) {
      Bone bone;
      bone.named = garment::named(name);
      bone.number = 2;
      bone.channel_length = garment::said(length);
      bone.stock = "quarter bone";
      project.bones.push_back(bone);
    }
    Figures figures;
    Diagnostics diag;
    const auto plans = add_bones(project, figures, diag);
    REQUIRE(plans.size() == 1);
    const FigureText text(figures, shown);
    const gownsheaf::testing::SmallProject small;
    const Typesetter typesetter(small.font, small.scale);
    const Drawing map = draw_channels(project, text, typesetter), bars = draw_bars(plans[0], text, typesetter);
    std::vector<std::string> allowed;
    for (const auto& [name, length] : channels) {
      INFO(name);
      const std::string printed = plain_text(figures.at(std::string("bones/") + name + "/bone length"), shown);
      CHECK(drawn_says(map, "2 of " + printed));
      CHECK(drawn_says(map, name));
      allowed.push_back(printed);
    }
    for (const Label* label : labels_of(bars))  // a number of the bar, or a bone's length where it has room
      if (plain(label->text).size() > 2) CHECK(std::find(allowed.begin(), allowed.end(), plain(label->text)) != allowed.end());
    std::size_t cut = 0;
    for (const BarOfBones& bar : plans[0].bars) cut += bar.cut.size();
    CHECK(cut == 8);
  }
}
