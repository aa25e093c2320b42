// Every example, made once by the real program and looked at from outside: by qpdf and poppler, in another folder,
// locale and time zone, with the processor's vector instructions masked.
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "make_packet.h"
#include "support/catch.h"
#include "support/golden.h"
#include "support/program.h"
#include "support/run.h"

namespace fs = std::filesystem;
using namespace gownsheaf;
using gownsheaf_test::kProgram;
using gownsheaf_test::kTop;
using gownsheaf_test::run;
using gownsheaf_test::slurp;

namespace {

std::vector<std::string> example_names() {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(kTop + "/examples")) {
    if (fs::exists(entry.path() / "project.yaml")) names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::string project_of(const std::string& example) { return kTop + "/examples/" + example + "/project.yaml"; }

Order order_for(const std::string& example, const std::string& sheets) {
  Order order;
  order.project_path = "examples/" + example + "/project.yaml";
  order.template_folder = kTop + "/packet-templates";
  order.font_root = "/usr/share/fonts";
  order.sheets = sheets;
  order.with_listing = true;
  order.work.outline_work = 500'000;  // what is looked at here is the same of a poorer lay
  return order;
}

// All packets of all examples, made once.
struct MadePacket {
  std::string example, sheets;
  Made made;
  std::string pdf_path;
  std::vector<std::string> messages;
};

std::vector<std::string> told(const Diagnostics& diag) {
  std::vector<std::string> all;
  for (const Diagnostic& d : diag.sorted())
    all.push_back(std::to_string(d.at.line) + " " + d.code + ": " + d.sentence + " / " + d.hint + " / " + d.accepted_because);
  return all;
}

const std::vector<MadePacket>& all_packets() {
  static const std::vector<MadePacket> packets = [] {
    std::vector<MadePacket> made;
    const fs::path here = fs::current_path();
    fs::current_path(kTop);
    for (const std::string& example : example_names()) {
      for (const char* sheets : {"binder", "pin-up"}) {
        Diagnostics diag;
        MadePacket packet{example, sheets, make_packet(order_for(example, sheets), diag), "", {}};
        packet.messages = told(diag);
        packet.pdf_path = std::string(GOWNSHEAF_BINARY_DIR) + "/tests/" + example + "-" + sheets + ".pdf";
        std::ofstream(packet.pdf_path, std::ios::binary) << packet.made.pdf;
        made.push_back(std::move(packet));
      }
    }
    fs::current_path(here);
    return made;
  }();
  return packets;
}

std::string quoted(const std::string& path) { return "'" + path + "'"; }

}  // namespace

TEST_CASE("every example makes both sets without an error", "[examples]") {
  REQUIRE(all_packets().size() >= 4);
  for (const MadePacket& packet : all_packets()) {
    CAPTURE(packet.example, packet.sheets, packet.made.fault);
    CHECK(packet.made.readable);
    CHECK(packet.made.pages > 2);
    CHECK(packet.made.pdf.substr(0, 5) == "%PDF-");
  }
}

// Of a cloth that `check` does not search, the packet may say that it is short.
void leave_searched_out(std::vector<std::string>& checked, std::vector<std::string>& packet) {
  for (const std::string& note : std::vector<std::string>(checked)) {
    const std::size_t at = note.find(" lay-unsearched: ");
    if (at == std::string::npos) continue;
    std::erase(checked, note);
    std::erase_if(packet, [&](const std::string& m) { return m.rfind(note.substr(0, at) + " cloth-short: ", 0) == 0; });
  }
}

TEST_CASE("check says of every example what its packet says: the same messages, the same figures in them", "[examples]") {
  const fs::path here = fs::current_path();
  fs::current_path(kTop);
  std::vector<std::pair<std::string, std::vector<std::string>>> checked;
  for (const std::string& example : example_names()) {
    Diagnostics diag;
    check_only(order_for(example, "binder"), diag);
    checked.emplace_back(example, told(diag));
  }
  fs::current_path(here);
  REQUIRE(checked.size() >= 5);
  std::size_t said = 0, unsearched = 0;
  for (const auto& [example, messages] : checked)
    for (const MadePacket& packet : all_packets())
      if (packet.example == example) {
        CAPTURE(example, packet.sheets);
        std::vector<std::string> here_said = messages, there_said = packet.messages;
        leave_searched_out(here_said, there_said);
        CHECK(here_said == there_said);
        said += here_said.size();
        unsearched += messages.size() - here_said.size();
      }
  CHECK(said > 0);
  CHECK(unsearched > 0);  // the lamplighter's cloths
}

TEST_CASE("qpdf finds nothing wrong in any packet", "[examples][pdf]") {
  for (const MadePacket& packet : all_packets()) {
    const auto checked = run("qpdf --check " + quoted(packet.pdf_path) + " 2>&1");
    CAPTURE(packet.pdf_path, checked.out);
    CHECK(checked.code == 0);
  }
}

TEST_CASE("the text of a packet can be copied out, fractions too", "[examples][pdf]") {
  for (const MadePacket& packet : all_packets()) {
    const auto text = run("pdftotext -layout " + quoted(packet.pdf_path) + " - 2>/dev/null");
    CAPTURE(packet.pdf_path);
    CHECK(text.code == 0);
    CHECK(text.out.find("May I cut now?") != std::string::npos);
    CHECK(text.out.find(packet.sheets == "binder" ? "Order of work" : "What comes next") != std::string::npos);
    CHECK(text.out.find("{") == std::string::npos);  // a reference that named no figure
    CHECK(text.out.find("Page 1 of " + std::to_string(packet.made.pages)) != std::string::npos);
    CHECK(text.out.find("\xC2\xBD") == std::string::npos);  // no ready-made half
  }
}

TEST_CASE("pages are Letter or A4 to the point, and all fonts are inside", "[examples][pdf]") {
  const std::map<std::string, std::string> size = {{"wool-day-dress", "612 x 792"}, {"linen-skirt", "595.276 x 841.89"}};
  for (const MadePacket& packet : all_packets()) {
    const auto info = run("pdfinfo " + quoted(packet.pdf_path) + " 2>/dev/null");
    const auto fonts = run("pdffonts " + quoted(packet.pdf_path) + " 2>/dev/null");
    CAPTURE(packet.pdf_path, info.out, fonts.out);
    if (size.count(packet.example) == 1) CHECK(info.out.find(size.at(packet.example)) != std::string::npos);
    CHECK(fonts.out.find(" no  yes") == std::string::npos);
    CHECK(fonts.out.find("Roboto") != std::string::npos);
  }
}

TEST_CASE("figures and page listings of the linen skirt are the expected ones", "[examples][golden]") {
  for (const MadePacket& packet : all_packets()) {
    if (packet.example != "linen-skirt" || packet.sheets != "pin-up") continue;
    std::string figures = packet.made.figures_json;  // less its one member that may differ between machines
    const std::size_t from = figures.find("\"made with\"");
    REQUIRE(from != std::string::npos);
    figures.erase(from, figures.find('\n', from) - from + 1);
    gownsheaf_test::check_golden("packets/linen-skirt.figures.json", figures);
    gownsheaf_test::check_golden("packets/linen-skirt.listing", packet.made.listing);
  }
}

TEST_CASE("same input, same bytes: again, elsewhere, in another locale and time zone, without vector instructions",
          "[examples][same]") {
  const fs::path scratch = fs::path(GOWNSHEAF_BINARY_DIR) / "tests" / "same";
  fs::remove_all(scratch);
  fs::create_directories(scratch / "deep" / "er");
  for (const std::string& example : example_names()) {
    bool drawn = false;
    for (const auto& file : fs::directory_iterator(fs::path(project_of(example)).parent_path())) {
      drawn = drawn || file.path().extension() == ".svg";
      for (const fs::path& folder : {scratch, scratch / "deep" / "er"})
        fs::copy_file(file.path(), folder / file.path().filename(), fs::copy_options::overwrite_existing);
    }
    const std::string effort = drawn ? " --effort quick" : "";
    const auto make = [&](const std::string& before, const std::string& folder, const std::string& name,
                          const std::string& more = "") {
      const auto ran = run("cd " + quoted(folder) + " && " + before + " " + quoted(kProgram) + " packet project.yaml -q" +
                           effort + more + " -o " + quoted((scratch / name).string()) + " 2>&1");
      CAPTURE(example, before, ran.out);
      REQUIRE(ran.code == 0);
      return slurp((scratch / name).string()) + slurp((scratch / (name.substr(0, name.size() - 4) + ".figures.json")).string());
    };
    const std::string first = make("", scratch.string(), "a.pdf", drawn ? " --threads 8" : "");
    CHECK(first.size() > 10000);
    if (drawn) {  // its lays take seconds: the two ways that could change them, at once
#ifndef GOWNSHEAF_SANITIZED
      CHECK(make("GLIBC_TUNABLES=glibc.cpu.hwcaps=-AVX2,-FMA,-FMA4", scratch.string(), "f.pdf", " --threads 1") == first);
#endif
      continue;
    }
    CHECK(make("", scratch.string(), "b.pdf") == first);
#ifdef GOWNSHEAF_SANITIZED  // the other ways change nothing that a sanitizer sees, and each takes seconds here
    continue;
#endif
    CHECK(make("", (scratch / "deep" / "er").string(), "c.pdf") == first);
    CHECK(make("LC_ALL=de_DE.UTF-8 LANG=de_DE.UTF-8", scratch.string(), "d.pdf") == first);
    CHECK(make("TZ=Pacific/Kiritimati", scratch.string(), "e.pdf") == first);
    CHECK(make("GLIBC_TUNABLES=glibc.cpu.hwcaps=-AVX2,-FMA,-FMA4", scratch.string(), "f.pdf") == first);
  }
}
