#include "calculate/bones.h"

#include <algorithm>
#include <map>

#include "calculate/new_figure.h"
#include "diagnostics/message.h"
#include "nest/cutting_stock.h"

namespace gownsheaf {
namespace {

bool is_notion(const Project& project, const std::string& casing) { return !casing.empty() && project.notion(casing) != nullptr; }

class Boning {
 public:
  Boning(const Project& project, Figures& figures, Diagnostics& diag)
      : project_(project), figures_(figures), diag_(diag), in_(shown_in(project)) {}

  std::vector<BonePlan> made() {
    std::vector<BonePlan> plans;
    for (const BoneStock& stock : project_.bone_stock) {
      std::vector<CutBone> bones;
      for (const Bone& bone : project_.bones)
        if (same_name(bone.stock, stock.named.name)) add_bone(bone, stock, bones);
      if (!bones.empty()) plans.push_back(cut(stock, std::move(bones)));
    }
    add_casing();
    return plans;
  }

 private:
  void say(Severity severity, std::string code, const Named& item, const SourceSpan& at, std::string sentence, std::string hint) {
    diag_.add(message({item.name, "bones", "bones"}, severity, std::move(code), at, std::move(sentence), std::move(hint)));
  }
  std::string said(Length l) const { return worked(l, in_); }

  NewFigure figure(const Bone& bone, std::string_view quantity) {
    NewFigure f(figures_, in_, "bones", bone.named.name, quantity);
    f.at(bone.named.at);
    return f;
  }

  // The channel, or where only the bone is written the seam or edge that it follows.
  std::optional<Length> holds(const Bone& bone) const {
    if (bone.channel_length.known()) return *bone.channel_length;
    if (const Seam* seam = project_.seam(bone.on_seam); seam != nullptr && seam->length.known()) return *seam->length;
    if (const EdgeLine* edge = project_.edge(bone.on_edge); edge != nullptr && edge->length.known()) return *edge->length;
    return std::nullopt;
  }

  void add_bone(const Bone& bone, const BoneStock& stock, std::vector<CutBone>& bones) {
    const std::string key = "bones/" + bone.named.name + "/";
    if (bone.channel_length.known())
      figure(bone, "channel length")
          .is(*bone.channel_length)
          .at(bone.channel_length.at)
          .written()
          .from("", bone.channel_length)
          .add();
    figure(bone, "number").is(bone.number).written().add();
    judge_channel_width(bone, stock);
    judge_channel_length(bone);
    const auto length = bone_length(bone, stock, key);
    if (!length) return;
    for (std::int64_t n = 1; n <= bone.number; ++n) bones.push_back({bone.named.name, static_cast<int>(n), *length});
    if (bone.crosses_waist_seam.known() && *bone.crosses_waist_seam && project_.joined_at_waist.known() &&
        *project_.joined_at_waist)
      say(Severity::warning, "bone-in-waist-seam", bone.named, bone.crosses_waist_seam.at,
          "Bone " + bone.named.name + " crosses the waist seam that joins the skirt.",
          "end its channel above the seam's allowance");
  }

  // A channel lies between the ends of what it follows.
  void judge_channel_length(const Bone& bone) {
    if (!bone.channel_length.known()) return;
    const Seam* seam = project_.seam(bone.on_seam);
    const EdgeLine* edge = project_.edge(bone.on_edge);
    const Given<Length>* along = seam != nullptr ? &seam->length : edge != nullptr ? &edge->length : nullptr;
    if (along == nullptr || !along->known() || *bone.channel_length <= **along) return;
    say(Severity::warning, "bone-channel-long", bone.named, bone.channel_length.at,
        "Channel " + bone.named.name + " is " + said(*bone.channel_length) + " long; " +
            (seam != nullptr ? bone.on_seam : bone.on_edge) + ", which it follows, is " + said(**along) + ".",
        "`length: " + said(**along) + "`, or another " + (seam != nullptr ? "`on seam`" : "`on edge`") +
            "; a channel that goes on past it is accepted under `accept`");
  }

  // 1/16 to 3/16 in more than the bone is wide (common practice; a log of 1/4 in bones in 3/4 in tape calls them too loose).
  void judge_channel_width(const Bone& bone, const BoneStock& stock) {
    if (!bone.channel_width.known() || !stock.width.known()) return;
    const Length wide = *bone.channel_width, least = *stock.width + Length::sixty_fourths(4),
                 most = *stock.width + Length::sixty_fourths(12);
    const std::string seen =
        "Channel " + bone.named.name + " is " + said(wide) + " wide and its bone " + said(*stock.width) + ": ";
    const std::string hint = "`channel width: " + said(least) + "` to " + said(most) + "; common practice";
    if (wide < least)
      say(Severity::warning, "bone-channel-tight", bone.named, bone.channel_width.at,
          seen + "it will hardly go in, and the cloth strains.", hint);
    else if (wide > most)
      say(Severity::warning, "bone-channel-loose", bone.named, bone.channel_width.at, seen + "it will twist and wander.", hint);
  }

  // The rules that were read: Baldt's of whalebone, Ingalls' of featherbone.
  static bool published(BoneKind kind) { return kind == BoneKind::whalebone || kind == BoneKind::featherbone; }
  std::string rule_words() const {
    const BoneLengthIs rule = *project_.rules.bone_length_is;
    return rule == BoneLengthIs::by_its_kind ? "the rule of its kind" : "by `rules: bone length is`";
  }

  // A written bone that fits the seam or edge it follows and leaves less than its kind asks for at the ends: it wears through them.
  void judge_ends(const Bone& bone, const BoneStock& stock, Length length, const std::optional<Length>& room) {
    const Length less = usual_difference(stock.kind, *project_.rules.bone_length_is);
    if (!bone.bone_length.known() || !room || less > Length{} || length <= *room + less) return;
    say(Severity::warning, "bone-ends-tight", bone.named, bone.bone_length.at,
        "Bone " + bone.named.name + " is " + said(length) + " in a channel of " + said(*room) + ": " + said(-less) +
            " less is usual, so that its ends lie clear.",
        "`bone length: " + said(*room + less) + "`, or a `length` of its channel in its stead");
  }

  std::optional<Length> bone_length(const Bone& bone, const BoneStock& stock, const std::string& key) {
    const auto room = holds(bone);
    const bool turned_in = stock.kind == BoneKind::featherbone;
    Length length;
    NewFigure f = figure(bone, "bone length");
    if (bone.bone_length.known()) {
      length = *bone.bone_length;
      f.is(length).at(bone.bone_length.at).written().from("", bone.bone_length);
    } else if (bone.channel_length.known()) {
      const Given<Length>& clear = bone.end_clear.known() ? bone.end_clear : stock.end_clear;
      const Length more = clear.known() ? -(*clear * 2) : usual_difference(stock.kind, *project_.rules.bone_length_is);
      // Down to what a rule can measure: as printed, the bone still fits its channel and its bar.
      length = (*bone.channel_length + more).to_step(mark_step(in_), Rounding::down);
      if (!*stock.may_be_cut) length = nearest_sold(stock, length, bone);
      if (length <= Length{}) return std::nullopt;
      const bool less = more <= Length{};
      f.is(length).from(key + "channel length");
      if (clear.known()) f.from("bones/" + bone.named.name + "/end clear", clear);
      else
        f.from("rules/bone length is")
            .from("", Given<Length>::standing(more, published(stock.kind) ? 'a' : 'c', "the rule of its kind"));
      f.working(std::string(word_for(stock.kind)) + " for " + bone.named.name,
                std::string("channel ") + (less ? "−" : "+") + " " + (clear.known() ? "2 × end clear" : rule_words()) +
                    (*stock.may_be_cut ? "" : ", the next shorter that is sold"),
                said(*bone.channel_length) + (less ? " − " : " + ") + said(less ? -more : more));
    } else {
      return std::nullopt;  // to be measured
    }
    if (room && length > *room && !turned_in) {
      say(Severity::error, "bone-too-long", bone.named, bone.bone_length.known() ? bone.bone_length.at : bone.named.at,
          "Bone " + bone.named.name + " is " + said(length) + " in a channel of " + said(*room) + ".",
          bone.bone_length.known() || *project_.rules.bone_length_is != BoneLengthIs::casing_and_more
              ? "give the channel's `length` and leave the bone to the stock's rule"
              : "only featherbone is turned in: `rules: { bone length is: by its kind }`");
      return std::nullopt;
    }
    judge_ends(bone, stock, length, room);
    const Length longest = longest_of(stock);
    if (length > longest) {
      say(Severity::error, "no-stock-so-long", bone.named, stock.sold_as_at,
          "No " + stock.named.name + " is sold as long as " + said(length) + "; the longest is " + said(longest) + ".",
          "add a length to `sold as`");
      return std::nullopt;
    }
    f.add();
    return length;
  }

  Length longest_of(const BoneStock& stock) const {
    Length longest = stock.sold_as.empty() ? Length{} : stock.sold_as.back();
    if (stock.bought.known())
      for (const Length l : *stock.bought) longest = std::max(longest, l);
    return longest;
  }

  // Of stock that is not cut: the longest sold that goes into the channel. Nothing when even the shortest is too long.
  Length nearest_sold(const BoneStock& stock, Length most, const Bone& bone) {
    Length best;
    for (const Length l : stock.sold_as)
      if (l <= most) best = std::max(best, l);
    if (best.is_zero() && !stock.sold_as.empty())
      say(Severity::error, "no-stock-so-short", bone.named, stock.sold_as_at,
          "No " + stock.named.name + " is short enough for " + bone.named.name + ", which has room for " + said(most) +
              "; the shortest is " + said(stock.sold_as.front()) + ".",
          "add a length to `sold as`, or `may be cut: yes`");
    return best;
  }

  BonePlan cut(const BoneStock& stock, std::vector<CutBone> bones) {
    BonePlan plan;
    plan.stock = stock.named.name;
    plan.kind = std::string(word_for(stock.kind));
    plan.at = stock.named.at;
    nest::CutRequest request;
    request.kerf = stock.kerf;
    Length sum;
    for (const CutBone& bone : bones) {
      request.items.push_back(bone.length);
      sum += bone.length;
    }
    std::map<Length, std::int64_t> shelf;
    if (stock.bought.known())
      for (const Length l : *stock.bought) ++shelf[l];
    for (const auto& [length, number] : shelf) request.bars.push_back({length, number, true});
    for (const Length l : stock.sold_as) request.bars.push_back({l, std::nullopt, false});
    const nest::CutPlan cuts = nest::cut_from_stock(request);
    std::map<Length, std::int64_t> buy;
    for (const nest::CutBar& bar : cuts.bars) {
      const nest::BarKind& kind = request.bars[static_cast<std::size_t>(bar.kind)];
      BarOfBones cut_bar{kind.length, {}, bar.left};
      for (const int i : bar.items) cut_bar.cut.push_back(bones[static_cast<std::size_t>(i)]);
      if (!kind.on_shelf) ++buy[kind.length];
      plan.bars.push_back(std::move(cut_bar));
    }
    plan.to_buy.assign(buy.begin(), buy.end());
    plan.proven = cuts.proven;
    plan.bound = cuts.bound;
    add_stock_figures(stock, plan, static_cast<std::int64_t>(bones.size()), sum, cuts.taken);
    return plan;
  }

  void add_stock_figures(const BoneStock& stock, const BonePlan& plan, std::int64_t number, Length sum, Length taken) {
    const auto one = [&](const std::string& quantity) {
      NewFigure f(figures_, in_, "bone stock", stock.named.name, quantity);
      f.at(stock.named.at);
      return f;
    };
    const std::string key = "bone stock/" + stock.named.name + "/";
    NewFigure count = one("bones");
    count.is(number);
    NewFigure total = one("total length");
    total.is(sum);
    std::string numbers;
    for (const Bone& bone : project_.bones) {
      if (!same_name(bone.stock, stock.named.name) || figures_.find("bones/" + bone.named.name + "/bone length") == nullptr)
        continue;
      count.from("bones/" + bone.named.name + "/number");
      total.from("bones/" + bone.named.name + "/bone length").from("bones/" + bone.named.name + "/number");
      numbers += (numbers.empty() ? "" : " + ") + whole_number(bone.number) + " × " +
                 said(*figures_.length("bones/" + bone.named.name + "/bone length"));
    }
    count.add();
    total.working("all bones of " + stock.named.name, "sum of number × bone length", numbers).add();
    one("length to buy").is(taken).from(key + "total length").add();
    one("bound").is(plan.bound).from(key + "total length").add();
    for (std::size_t i = 0; i < plan.to_buy.size(); ++i) {
      const std::string k = whole_number(static_cast<std::int64_t>(i + 1));
      one("sold length " + k).is(plan.to_buy[i].first).written().add();
      one("to buy " + k).is(plan.to_buy[i].second).from(key + "length to buy").add();
    }
    for (std::size_t i = 0; i < plan.bars.size(); ++i) {
      const std::string bar = "bar " + whole_number(static_cast<std::int64_t>(i + 1));
      one(bar + "/length").is(plan.bars[i].stock_length).written().add();
      one(bar + "/left").is(plan.bars[i].left).from(key + bar + "/length").add();
    }
  }

  void add_casing() {
    for (const Notion& notion : project_.notions) {
      std::vector<Length> pieces;
      std::string numbers;
      NewFigure f(figures_, in_, "notions", notion.named.name, "casing needed");
      Length sum;
      for (const Bone& bone : project_.bones) {
        if (!is_notion(project_, bone.casing) || !same_name(bone.casing, notion.named.name) || !bone.channel_length.known())
          continue;
        const BoneStock* stock = project_.stock(bone.stock);
        if (stock == nullptr) continue;
        const Length each = *bone.channel_length + *stock->casing_ends;
        for (std::int64_t n = 0; n < bone.number; ++n) pieces.push_back(each);
        sum += each * bone.number;
        f.from("bones/" + bone.named.name + "/channel length")
            .from("bone stock/" + stock->named.name + "/casing ends", stock->casing_ends);
        numbers += (numbers.empty() ? "" : " + ") + whole_number(bone.number) + " × (" + said(*bone.channel_length) + " + " +
                   said(*stock->casing_ends) + ")";
      }
      if (pieces.empty()) continue;
      f.is(sum).at(notion.named.at).working("casing", "number × (channel + its ends)", numbers).add();
      if (!notion.bought_lengths.known()) continue;
      nest::CutRequest request;
      request.items = pieces;
      for (const Length l : *notion.bought_lengths) request.bars.push_back({l, 1, true});
      const nest::CutPlan cuts = nest::cut_from_stock(request);
      if (cuts.left_out.empty()) continue;
      Length missing;
      for (const int i : cuts.left_out) missing += pieces[static_cast<std::size_t>(i)];
      say(Severity::hold, "casing-short", notion.named, notion.bought_lengths.at,
          "Casing " + notion.named.name + ": the channels take " + said(sum) + "; on what was bought " + said(missing) +
              " of it find no room.",
          "buy that much more");
    }
  }

  const Project& project_;
  Figures& figures_;
  Diagnostics& diag_;
  ShownIn in_;
};

}  // namespace

Length usual_difference(BoneKind kind, BoneLengthIs rule) {
  const Length half = Length::sixty_fourths(32);
  const bool more = rule == BoneLengthIs::casing_and_more || (rule == BoneLengthIs::by_its_kind && kind == BoneKind::featherbone);
  return more ? half : -half;
}

std::vector<BonePlan> add_bones(const Project& project, Figures& figures, Diagnostics& diag) {
  return Boning(project, figures, diag).made();
}

}  // namespace gownsheaf
