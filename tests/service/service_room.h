// Folders of small projects and a workroom over them, for tests of the service.
#pragma once
#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "service/batch.h"
#include "support/scratch_folder.h"

namespace service_test {

using namespace gownsheaf;
using test::ScratchFolder;

// A skirt of one piece: hundredths of a second to make.
inline std::string skirt(const std::string& title, const std::string& more = "") {
  return "gownsheaf: 1\ntitle: " + title +
         "\nwearer: { name: Ada Rowan }\n"
         "cloths: { linen: { kind: dress linen, width: 140 cm, bought: [3 m] } }\n"
         "pieces: [{ piece: breadth, part of: skirt, make: 1, from: [linen], cut width: 100 cm, cut length: 95 cm }]\n"
         "print: { sheets: pin-up }\n" +
         more;
}

// A piece that is drawn, and the project that reads the drawing from below its own folder.
inline const std::string kDrawing =
    "<svg xmlns='http://www.w3.org/2000/svg' width='200mm' height='200mm' viewBox='0 0 200 200'>"
    "<path id='front' d='M10 10H110V150H10Z'/></svg>";
inline std::string drawn(const std::string& drawing) {
  return "gownsheaf: 1\ntitle: Drawn\ncloths: { linen: { kind: dress linen, width: 140 cm, bought: [1 m] } }\n"
         "pieces: [{ piece: front, part of: bodice, make: 1, from: [linen], outline: " +
         drawing + "#front, outline is: cut line }]\n";
}

struct Heard : ResultListener {
  std::vector<PacketResult> results;
  std::vector<std::string> said;
  void result(const PacketResult& r) override { results.push_back(r); }
  void progress(std::size_t, std::size_t) override {}
  void say(const std::string& sentence) override { said.push_back(sentence); }
  // "made a.yaml|failed b.yaml: why"
  std::string told() const {
    std::string text;
    for (const PacketResult& r : results)
      text += (text.empty() ? "" : "|") + std::string(word_for(r.state)) + " " + r.project.path +
              (r.problem.empty() ? "" : ": " + r.problem);
    return text;
  }
};

struct House {
  ScratchFolder folder;
  ServiceOrder order;
  House() {
    std::filesystem::create_directories(folder / "in");
    order.in = folder / "in";
    order.out = folder / "out";
    order.packet.template_folder = std::string(GOWNSHEAF_SOURCE_DIR) + "/packet-templates";
    order.packet.font_root = "/usr/share/fonts";
    order.packet.work.lay_work = 500;
    order.packet.work.outline_work = 200'000;
    order.jobs = 2;
    order.tell = [](const std::vector<Diagnostic>& messages, const std::vector<SourceText>& sources, bool failed) {
      std::string text;
      for (const Diagnostic& d : messages)
        if (failed && d.severity == Severity::error) text += render(d, sources);
      return text;
    };
  }
  void put(const std::string& name, const std::string& bytes) const { folder.put("in/" + name, bytes); }
  bool has(const std::string& name) const { return std::filesystem::exists(folder / ("out/" + name)); }
  std::string get(const std::string& name) const { return folder.get("out/" + name); }

  std::unique_ptr<Workroom> room(std::string* why = nullptr) const {
    Diagnostics diag;
    std::vector<SourceText> sources;
    std::string fault;
    auto opened = Workroom::open(order, diag, sources, fault);
    if (why != nullptr) *why = fault;
    return opened;
  }
  Heard batch(const ListMaker& list = {}) const {
    Heard heard;
    const auto opened = room();
    if (opened == nullptr) throw std::runtime_error("the workroom did not open");
    const BatchOutcome outcome = run_batch(*opened, list, heard);
    if (!outcome.unwritten.empty()) heard.said.push_back(outcome.unwritten);
    return heard;
  }
};

}  // namespace service_test
