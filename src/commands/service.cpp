#include "commands/service.h"

#include <sched.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <cstdio>

#include "commands/packet_list.h"
#include "diagnostics/shown.h"
#include "service/results_json.h"
#include "write/messages_json.h"

namespace gownsheaf {
namespace {

int processors() {
  cpu_set_t mine;
  CPU_ZERO(&mine);
  return ::sched_getaffinity(0, sizeof mine, &mine) == 0 ? std::max(1, CPU_COUNT(&mine)) : 1;
}

bool read_share(const std::string& text, int& shard, int& shards) {
  const char* end = text.data() + text.size();
  const auto first = std::from_chars(text.data(), end, shard);
  if (first.ec != std::errc() || first.ptr == end || *first.ptr != '/') return false;
  const auto second = std::from_chars(first.ptr + 1, end, shards);
  return second.ec == std::errc() && second.ptr == end && shard >= 1 && shards >= shard && shards <= 1'000'000;
}

}  // namespace

std::optional<ServiceOrder> service_order_from(const Settings& settings) {
  ServiceOrder order;
  order.in = settings.project;
  order.out = settings.output;
  order.packet = order_from(settings);
  order.packet.project_path.clear();
  const int room = std::max(1, processors() / settings.threads);  // workers times threads are never more than processors
  order.jobs = settings.jobs == 0 ? room : std::min(settings.jobs, room);
  if (order.jobs < settings.jobs)
    say(settings, "There are " + std::to_string(processors()) + " processors, so " + std::to_string(order.jobs) +
                      " packets are made at once.");
  const int usual_limit = settings.effort == "patient" ? 1800 : 300;
  order.ceilings = {settings.time_limit > 0 ? settings.time_limit : usual_limit, settings.memory_limit};
  order.trust_paths = settings.trust_paths;
  order.keep_going = settings.keep_going;
  order.keep_lays = settings.keep_lays;
  if (!settings.shard.empty() && !read_share(settings.shard, order.shard, order.shards)) {
    say_fault(settings, "`--shard " + settings.shard + "` is not a share: write `--shard 2/4` for the second of four.");
    return std::nullopt;
  }
  order.tell = [settings](const std::vector<Diagnostic>& messages, const std::vector<SourceText>& sources, bool failed) {
    std::string text;
    for (const Diagnostic& d : messages) {
      if (!settings.verbose && (!failed || d.severity != Severity::error)) continue;
      text += settings.log == LogForm::json ? message_json(d) + "\n" : render(d, sources);
    }
    return text;
  };
  return order;
}

std::unique_ptr<Workroom> open_workroom(const Settings& settings, const ServiceOrder& order) {
  Diagnostics diag;
  std::vector<SourceText> sources;
  std::string fault;
  std::unique_ptr<Workroom> room = Workroom::open(order, diag, sources, fault);
  print_messages(settings, diag, sources);
  if (!room) say_fault(settings, fault);
  else if (room->temporaries_cleared() > 0)
    say(settings, std::to_string(room->temporaries_cleared()) + " unfinished files of a run that was ended were cleared away.");
  return room;
}

ListMaker list_maker(const Settings& settings) {
  return [a4 = settings.paper == "a4"](const Workroom& room, const std::vector<PacketResult>& results) {
    return packet_list_pdf(results, *room.shared().fonts, a4);
  };
}

Teller::Teller(const Settings& settings, bool news)
    : settings_(settings), news_(news),
      terminal_(!news && !settings.quiet && settings.log == LogForm::plain && ::isatty(2) == 1) {}

void Teller::clear_line() {
  if (line_shown_) std::fputs("\r\033[K", stderr);
  line_shown_ = false;
}

void Teller::result(const PacketResult& r) {
  if (news_ && r.state == PacketState::current && !settings_.verbose) return;
  clear_line();
  if (!r.messages.empty()) {
    std::fwrite(r.messages.data(), 1, r.messages.size(), stderr);
    std::fflush(stderr);
  }
  if (settings_.quiet && r.state != PacketState::failed) return;
  if (settings_.log == LogForm::json) {
    std::fputs(result_json_line(r).c_str(), stdout);
  } else if (r.state == PacketState::failed) {
    std::printf("failed   %s: %s\n", shown::safe(r.project.path).c_str(), shown::safe(r.problem).c_str());
  } else {
    std::printf("%-8s %s\n", std::string(word_for(r.state)).c_str(), shown::safe(r.project.stem + ".pdf").c_str());
  }
  std::fflush(stdout);
}

void Teller::progress(std::size_t done, std::size_t of) {
  if (!terminal_) return;
  std::fprintf(stderr, "\r\033[K%zu of %zu", done, of);
  line_shown_ = true;
}

void Teller::say(const std::string& sentence) {
  clear_line();
  say_fault(settings_, sentence);
}

void Teller::summary(const PacketCounts& counts) {
  clear_line();
  const std::size_t all = counts.made + counts.current + counts.failed;
  if (settings_.log == LogForm::json) std::fputs(counts_json_line(counts).c_str(), stdout);
  else
    std::printf("%zu %s: %zu made, %zu current, %zu failed.\n", all, all == 1 ? "project" : "projects", counts.made,
                counts.current, counts.failed);
  std::fflush(stdout);
}

bool Teller::could_not_tell() {
  if (std::ferror(stdout) == 0) return false;
  say_fault(settings_, "Standard output could not be written.");
  return true;
}

}  // namespace gownsheaf
