// Projects as a stranger might send them to do harm: bombs, rings, ways out of the folder, things that are no files, what is too large
// or never ends, bytes in the wrong encoding. Each must be refused. The same number makes the same file.
#pragma once
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/sysmacros.h>
#include <unistd.h>

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <vector>

namespace hostile {

namespace fs = std::filesystem;

inline std::string times(const std::string& what, std::size_t n) {
  std::string out;
  out.reserve(what.size() * n);
  for (std::size_t i = 0; i < n; ++i) out += what;
  return out;
}

struct Place {
  std::string folder;  // of this project alone
  int n;               // its number: a little of everything varies by it
  void put(const std::string& name, const std::string& bytes) const {
    std::ofstream(folder + "/" + name, std::ios::binary) << bytes;
  }
  void project(const std::string& rest) const {
    put("project.yaml", "gownsheaf: 1\ntitle: Stranger " + std::to_string(n) + "\n" + rest);
  }
  // A project whose one piece is drawn in `drawing`.
  void drawn(const std::string& drawing) const {
    project(
        "cloths: { linen: { kind: dress linen, width: 140 cm, bought: [1 m] } }\n"
        "pieces: [{ piece: front, part of: bodice, make: 1, from: [linen], outline: \"" +
        drawing + "#front\", outline is: cut line }]\n");
  }
  void svg(const std::string& name, const std::string& inside, const std::string& before = "") const {
    put(name, before + "<svg xmlns='http://www.w3.org/2000/svg' width='200mm' height='200mm' viewBox='0 0 200 200'>" + inside +
                  "</svg>");
  }
  std::size_t more(std::size_t least) const { return least + least * static_cast<std::size_t>(n % 5); }
};

inline const std::string kFront = "<path id='front' d='M10 10H110V150H10Z'/>";

using Maker = std::function<void(const Place&)>;

inline std::vector<Maker> makers() {
  std::vector<Maker> all;
  const auto add = [&](Maker m) { all.push_back(std::move(m)); };
  add([](const Place& p) {  // laughs
    std::string text = "a0: &a0 [lol, lol]\n";
    for (int i = 1; i < 30 + p.n % 9; ++i)
      text +=
          "a" + std::to_string(i) + ": &a" + std::to_string(i) + " [" + times("*a" + std::to_string(i - 1) + ", ", 9) + "x]\n";
    p.project(text);
  });
  add([](const Place& p) { p.project("note: &ring [*ring]\n"); });
  add([](const Place& p) { p.project("note: " + times("[", p.more(40'000)) + "\n"); });
  add([](const Place& p) { p.project("note: " + times("{a: ", p.more(20'000)) + "\n"); });
  add([](const Place& p) { p.project("note: " + times("x", 3u << 20) + "\n"); });
  add([](const Place& p) {  // a file of terabytes that takes no room
    p.project("");
    fs::resize_file(p.folder + "/project.yaml", std::uintmax_t{1} << (36 + p.n % 5));
  });
  add([](const Place& p) { p.put("project.yaml", std::string("\xFF\xFEg\0o\0w\0n\0", 10)); });
  add([](const Place& p) { p.project("note: caf\xE9 " + std::string(1, static_cast<char>(0xC0 + p.n % 30)) + "\n"); });
  add([](const Place& p) { p.project(std::string("note: a\0b\n", 10)); });
  add([](const Place& p) { p.project("note: \x1B]0;yours\x07\x1B[2J\n"); });
  add([](const Place& p) { p.project("note: \xF8\x88\x80\x80\x80 \xED\xA0\x80\n"); });
  add([](const Place& p) { p.drawn(times("../", static_cast<std::size_t>(1 + p.n % 7)) + "secret.svg"); });
  add([](const Place& p) { p.drawn("a/../../../secret.svg"); });
  add([](const Place& p) { p.drawn("/etc/passwd"); });
  add([](const Place& p) {
    fs::create_symlink("/etc/passwd", p.folder + "/pieces.svg");
    p.drawn("pieces.svg");
  });
  add([](const Place& p) {  // even one that stays inside
    p.svg("real.svg", kFront);
    fs::create_symlink("real.svg", p.folder + "/pieces.svg");
    p.drawn("pieces.svg");
  });
  add([](const Place& p) {
    fs::create_symlink("/", p.folder + "/root");
    p.drawn("root/etc/passwd");
  });
  add([](const Place& p) {
    fs::create_symlink("ring.svg", p.folder + "/ring.svg");
    p.drawn("ring.svg");
  });
  add([](const Place& p) {
    ::mkfifo((p.folder + "/pieces.svg").c_str(), 0666);
    p.drawn("pieces.svg");
  });
  add([](const Place& p) { ::mkfifo((p.folder + "/project.yaml").c_str(), 0666); });
  add([](const Place& p) {  // a device of zeros without end; a pipe where one may not make it
    const std::string path = p.folder + "/project.yaml";
    if (::mknod(path.c_str(), S_IFCHR | 0666, makedev(1, 5)) != 0) ::mkfifo(path.c_str(), 0666);
  });
  add([](const Place& p) { fs::create_symlink("/dev/zero", p.folder + "/project.yaml"); });
  add([](const Place& p) { fs::create_symlink("project.yaml", p.folder + "/project.yaml"); });
  add([](const Place& p) {  // a folder in the drawing's place
    fs::create_directory(p.folder + "/pieces.svg");
    p.drawn("pieces.svg");
  });
  add([](const Place& p) {  // laughs in a drawing
    std::string dtd = "<!DOCTYPE svg [<!ENTITY a0 'lol'>";
    for (int i = 1; i < 20; ++i)
      dtd += "<!ENTITY a" + std::to_string(i) + " '" + times("&a" + std::to_string(i - 1) + ";", 10) + "'>";
    p.svg("pieces.svg", "<path id='front' d='&a19;'/>", dtd + "]>");
    p.drawn("pieces.svg");
  });
  add([](const Place& p) {
    p.svg("pieces.svg", "<text>&x;</text><path id='back' d='M0 0H9V9Z'/>",
          "<!DOCTYPE svg [<!ENTITY x SYSTEM 'file:///etc/passwd'>]>");
    p.drawn("pieces.svg");
  });
  add([](const Place& p) {  // uses of uses
    std::string inside = "<g id='u0'><path d='M0 0H1V1Z'/></g>";
    for (int i = 1; i < 24; ++i)
      inside += "<g id='u" + std::to_string(i) + "'>" + times("<use href='#u" + std::to_string(i - 1) + "'/>", 8) + "</g>";
    p.svg("pieces.svg", inside + "<use id='front' href='#u23'/>");
    p.drawn("pieces.svg");
  });
  add([](const Place& p) {
    p.svg("pieces.svg", "<g id='front'><use href='#front'/></g>");
    p.drawn("pieces.svg");
  });
  add([](const Place& p) {
    p.svg("pieces.svg", times("<g>", p.more(20'000)));
    p.drawn("pieces.svg");
  });
  add([](const Place& p) {  // more points than are read
    p.svg("pieces.svg", "<path id='front' d='M0 0" + times("L1 2L2 1", p.more(30'000)) + "Z'/>");
    p.drawn("pieces.svg");
  });
  add([](const Place& p) {
    p.svg("pieces.svg", "<path id='front' d='M1e308 -1e308L1e999 nan 0 inf9 9Z'/>");
    p.drawn("pieces.svg");
  });
  add([](const Place& p) { p.project(times("note: x\n", p.more(20'000))); });
  add([](const Place& p) {  // more entries than are read
    p.project("notions: {" + times("b: {kind: x}, ", p.more(30'000)) + "}\n");
  });
  add([](const Place& p) { p.project("cloths: { linen: { kind: dress linen, width: 9" + times("9", p.more(400)) + " m } }\n"); });
  add([](const Place& p) {
    p.project(
        "cloths: { linen: { kind: dress linen, width: 140 cm, shrinks: 100 % } }\n"
        "pieces: [{ piece: breadth, part of: skirt, make: 999999999999999, from: [linen], cut width: full, cut length: 400 m }]\n");
  });
  add([](const Place& p) {
    p.project("pieces: [" +
              times("{ piece: x, part of: skirt, make: 1, from: [y], cut width: 1 m, cut length: 1 m }, ", p.more(600)) + "]\n");
  });
  add([](const Place& p) {
    p.project("pleats: [{ run: w, of: [nothing], kind: knife, finished: 1 mm, count: 4000000000000000000 }]\n");
  });
  add([](const Place& p) { p.put("project.yaml", "gownsheaf: 1\ntitle: " + times("y", p.more(500)) + "\n"); });
  add([](const Place& p) {
    p.project("note: \xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D \xF0\x9F\x91\x97\n");
  });  // letters that no face holds
  add([](const Place& p) { p.project("<<: {a: 1}\n---\ngownsheaf: 1\n"); });
  add([](const Place& p) { p.project("note: 'never ends\n"); });
  add([](const Place& p) {  // noise
    std::string noise;
    std::uint32_t x = 12345u + static_cast<std::uint32_t>(p.n);
    for (int i = 0; i < 5000; ++i) noise += static_cast<char>((x = x * 1664525u + 1013904223u) >> 24);
    p.put("project.yaml", noise);
  });
  add([](const Place& p) {  // its packet's name is too long
    p.put(times("n", 250) + ".yaml", "gownsheaf: 1\ntitle: x\n");
  });
  add([](const Place& p) { p.put("a\n\x1B[2J\xFF.yaml", "gownsheaf: 1\nnote: x\n"); });
  add([](const Place& p) { p.put("project.yaml", ""); });
  return all;
}

// n of them, each in a folder of its own below `folder`.
inline void fill(const std::string& folder, int n) {
  const std::vector<Maker> all = makers();
  for (int i = 0; i < n; ++i) {
    const Place place{folder + "/s" + std::to_string(1000 + i), i / static_cast<int>(all.size()) + i};
    fs::create_directories(place.folder);
    all[static_cast<std::size_t>(i) % all.size()](place);
  }
}

}  // namespace hostile
