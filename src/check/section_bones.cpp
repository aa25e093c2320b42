// Bone channels and the stock they are cut from. Whether a bone fits its channel is the calculator's to say.
#include <algorithm>

#include "check/sections.h"

namespace gownsheaf {

void fill_bone_stock(const Filling& file, Project& project) {
  for (const Item& item : items_of_map(file.root, "bone stock")) {
    BoneStock stock;
    stock.named = named_of(file, item, "bone stock", "");
    stock.kind = choice(item.word("kind"), BoneKind::cord).value.value_or(BoneKind::synthetic_whalebone);
    const auto lengths = [](const Item& of, std::string_view key) {
      std::vector<Length> out;
      for (const Entry* e : of.values(key))
        if (e->kind == Entry::Kind::text)
          if (const auto read = read_length(e->text, key); read.ok()) out.push_back(read.value().length);
      return out;
    };
    stock.sold_as = lengths(item, "sold as");
    std::sort(stock.sold_as.begin(), stock.sold_as.end());
    if (const Entry* e = item.at("sold as")) stock.sold_as_at = e->at;
    stock.may_be_cut = item.yes_no("may be cut");
    if (!stock.may_be_cut.known()) {
      const bool fixed = stock.kind == BoneKind::flat_steel;
      stock.may_be_cut = Given<bool>::guessed(!fixed, "its kind: " + std::string(word_for(stock.kind)), stock.named.at);
    }
    stock.kerf = item.length("kerf").value.value_or(Length{});
    stock.width = item.length("width");
    stock.thickness = item.length("thickness");
    stock.end_clear = item.length("end clear");
    stock.casing_ends = item.length("casing ends");
    if (!stock.casing_ends.known())
      stock.casing_ends = Given<Length>::standing(Length::inches(1), 'a', "1 in of casing more than its channel");
    if (const Entry* e = item.at("bought")) stock.bought = Given<std::vector<Length>>::written(lengths(item, "bought"), e->at);
    project.bone_stock.push_back(std::move(stock));
  }
}

void fill_bones(const Filling& file, Project& project) {
  for (const Item& item : file.root.items("bones")) {
    Bone bone;
    bone.named = named_of(file, item, "bones", "channel");
    bone.on_seam = name_in(file, item, "on seam", "seams");
    bone.on_edge = name_in(file, item, "on edge", "edges");
    const Seam* seam = project.seam(bone.on_seam);
    bone.number = item.count("number").value.value_or(seam == nullptr ? 1 : seam->number);
    bone.channel_length = item.length("length");
    bone.bone_length = item.length("bone length");
    bone.stock = name_in(file, item, "stock", "bone stock");
    const auto casing = item.word("casing");
    bone.casing = casing.known() ? *casing : name_in(file, item, "casing", "notions");
    bone.channel_width = item.length("channel width");
    bone.end_clear = item.length("end clear");
    bone.crosses_waist_seam = item.yes_no("crosses waist seam");
    project.bones.push_back(std::move(bone));
  }
}

}  // namespace gownsheaf
