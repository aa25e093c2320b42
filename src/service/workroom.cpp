#include "service/workroom.h"

#include <algorithm>
#include <climits>
#include <set>

#include "service/fields.h"
#include "service/lay_pack.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kMostMessages = 200;  // of one project

std::string without_slash(std::string path) {
  while (path.size() > 1 && path.ends_with('/')) path.pop_back();
  return path;
}

bool lies_in(const std::string& path, const std::string& folder) {
  return path == folder || path.starts_with(folder == "/" ? "/" : folder + "/");
}

std::string option(const std::optional<std::string>& chosen) { return chosen ? "as " + *chosen : "of the project"; }

std::string options_mark(const ServiceOrder& order) {
  const Order& p = order.packet;
  return "paper " + option(p.paper) + ", set " + option(p.sheets) + ", size " + option(p.size) + ", work " +
         std::to_string(p.work.lay_work) + " " + std::to_string(p.work.outline_work);
}

// What must be the same for one that was stopped to be stopped again.
std::string ceilings_mark(const ServiceOrder& order) {
  return std::to_string(order.ceilings.seconds) + " s, " + std::to_string(order.ceilings.memory_mib) + " MiB, threads " +
         std::to_string(order.packet.work.threads);
}

FieldLine read_as(const std::string& fingerprint, const std::vector<std::string>& drawings) {
  FieldLine line{fingerprint};
  line.insert(line.end(), drawings.begin(), drawings.end());
  return line;
}

std::string what_stopped(std::size_t errors) { return errors == 1 ? "1 error" : std::to_string(errors) + " errors"; }

// `as`: a fingerprint, then drawings; of a failed project that would fail alike again.
std::string answer_of(PacketState state, const std::string& problem, const std::string& messages, const std::string& more,
                      bool unwritten = false, const FieldLine& as = {""}) {
  std::string text;
  add_line(text, {std::string(word_for(state)), problem, messages, more, unwritten ? "unwritten" : ""});
  add_line(text, as);
  return text;
}

}  // namespace

std::string_view word_for(PacketState state) {
  return state == PacketState::made ? "made" : state == PacketState::current ? "current" : "failed";
}

std::unique_ptr<Workroom> Workroom::open(const ServiceOrder& order, Diagnostics& diag, std::vector<SourceText>& sources,
                                         std::string& fault) {
  std::unique_ptr<Workroom> room(new Workroom(order));
  ServiceOrder& o = room->order_;
  o.in = without_slash(o.in);
  o.out = without_slash(o.out);
  room->out_ = OutFolder(o.out);
  const auto said = [&](const std::optional<FileFault>& why) {
    if (why) fault = why->sentence;
    return why.has_value();
  };
  if (kind_at(o.in) != FolderEntry::Kind::folder) {
    fault = exists(o.in) ? "`" + o.in + "` is not a folder." : "There is no folder `" + o.in + "`.";
    return nullptr;
  }
  if (o.out.empty()) {
    fault = "No folder was named for the packets.";
    return nullptr;
  }
  if (said(make_folders(o.out))) return nullptr;
  const auto real_in = real_path_of(o.in), real_out = real_path_of(o.out);
  if (!real_in || !real_out || lies_in(*real_in, *real_out)) {
    fault = "Packets may not go to `" + o.out + "`: the projects lie in it. Name another folder, or one below.";
    return nullptr;
  }
  room->real_out_ = *real_out;
  if (said(make_folders(room->out_.records()))) return nullptr;  // not before: nothing is left among the projects

  const std::string busy = "Another batch or watch is at work in `" + o.out + "`; wait for it, or name another folder.";
  // Shares of another number would hold some of the same projects.
  const std::string unlike = "Shares of another number than " + std::to_string(o.shards) + " are at work in `" + o.out +
                             "`; wait for them, or name another folder.";
  const std::string lock_file = room->out_.own() + "/lock";
  FileResult<HeldLock> lock = o.shards > 0 ? HeldLock::take_alike(lock_file, std::to_string(o.shards), busy, unlike)
                                           : HeldLock::take(lock_file, false, busy);
  if (!lock.ok()) {
    fault = lock.fault.sentence;
    return nullptr;
  }
  room->lock_ = std::move(*lock.value);
  if (o.shards > 0) {
    FileResult<HeldLock> share =
        HeldLock::take(room->out_.own() + "/lock." + std::to_string(o.shard) + "-of-" + std::to_string(o.shards), false, busy);
    if (!share.ok()) {
      fault = share.fault.sentence;
      return nullptr;
    }
    room->share_lock_ = std::move(*share.value);
  }

  auto shared = load_shared(o.packet.template_folder, o.packet.font_root, diag, sources, fault);
  if (!shared) return nullptr;
  room->shared_ = std::move(*shared);
  room->standing_mark_ =
      sha256(program_mark() + "\n" + room->shared_.template_marks + "\n" + room->shared_.font_marks + "\n" + options_mark(o));
  if (o.shards == 0) room->cleared_ = room->out_.clear_temporaries(nullptr);
  return room;
}

// By a hash of its packet's name, so that a project stays in its share while others come and go, and two that would make one packet
// meet in one share.
bool Workroom::in_this_share(const std::string& stem) const {
  std::uint64_t number = 0;
  for (const char c : sha256(stem).substr(0, 8))
    number = number * 16 + static_cast<std::uint64_t>(c <= '9' ? c - '0' : c - 'a' + 10);
  return number % static_cast<std::uint64_t>(order_.shards) + 1 == static_cast<std::uint64_t>(order_.shard);
}

ProjectSearch Workroom::search() const {
  ProjectSearch search{order_.in, real_out_, order_.trust_paths};
  if (order_.shards > 0) search.wanted = [this](const std::string& stem) { return in_this_share(stem); };
  return search;
}

Order Workroom::order_for(const FoundProject& project) const {
  Order order = order_.packet;
  order.project_path = order_.in + "/" + project.path;
  order.confined_below = order_.trust_paths ? "" : order_.in;
  order.trust_paths = order_.trust_paths;
  order.shared = &shared_;
  return order;
}

std::string Workroom::fingerprint(const std::string& project_mark) const { return sha256(standing_mark_ + project_mark); }

std::optional<std::string> Workroom::fingerprint_now(const FoundProject& project,
                                                     const std::vector<std::string>& drawings) const {
  const Order order = order_for(project);
  const FileResult<std::string> bytes = read_project(order);
  if (!bytes.ok()) return std::nullopt;
  std::vector<std::optional<std::string>> read;
  for (const std::string& name : drawings) read.push_back(read_drawing(order, name).value);
  return fingerprint(project_mark(*bytes.value, read));
}

bool Workroom::fails_still(const FoundProject& project, const PacketResult& before) const {
  return !before.fingerprint.empty() && project.refused.empty() &&
         fingerprint_now(project, before.drawings) == before.fingerprint;
}

std::optional<PacketResult> Workroom::without_making(const FoundProject& project) const {
  PacketResult result;
  result.project = project;
  result.record = older_packet(project);
  if (!project.refused.empty()) {
    result.problem = project.refused;
    return result;
  }
  if (result.record && fingerprint_now(project, result.record->drawings) == result.record->fingerprint &&
      out_.holds(project.stem, *result.record)) {
    result.state = PacketState::current;
    return result;
  }
  auto stopped = out_.read_stopped(project.stem);
  if (!stopped || stopped->project != project.path || stopped->ceilings != ceilings_mark(order_)) return std::nullopt;
  if (fingerprint_now(project, stopped->drawings) != stopped->fingerprint) return std::nullopt;
  result.problem = stopped->problem + " It is not tried again until it, the program or a limit has changed.";
  result.fingerprint = std::move(stopped->fingerprint);
  result.drawings = std::move(stopped->drawings);
  result.stopped = true;
  return result;
}

std::optional<PacketRecord> Workroom::older_packet(const FoundProject& project) const {
  std::optional<PacketRecord> record = out_.read_record(project.stem);
  if (record && (record->project != project.path || !exists(out_.file(project.stem + ".pdf")))) record.reset();
  return record;
}

std::string Workroom::make(const FoundProject& project) const {
  Diagnostics diag;
  Order order = order_for(project);
  LayPack lays(order_.keep_lays ? read_below(out_.own(), "lays/" + project.stem + ".lays", kLargestLays).value.value_or("") : "");
  if (order_.keep_lays) order.work.store = &lays;
  order.when_read = [this](const std::string& mark, const std::vector<std::string>& drawings) {
    std::string line;
    add_line(line, read_as(fingerprint(mark), drawings));
    WorkerPool::say_ahead(line);
  };
  const Made made = make_packet(order, diag);
  std::vector<Diagnostic> messages = diag.sorted();
  const auto is_error = [](const Diagnostic& d) { return d.severity == Severity::error; };
  const auto errors = static_cast<std::size_t>(std::count_if(messages.begin(), messages.end(), is_error));
  const bool failed = !made.readable || errors > 0 || !made.unavailable.empty();
  // Errors first of all when there are more than are told.
  if (messages.size() > kMostMessages) {
    std::stable_partition(messages.begin(), messages.end(), is_error);
    messages.resize(kMostMessages);
  }
  const std::string told = order_.tell ? order_.tell(messages, made.sources, failed) : "";
  if (failed) {
    const std::string problem = !made.readable ? made.fault
                                : errors > 0   ? "It has " + what_stopped(errors) + "."
                                               : made.unavailable;
    std::string plain;
    for (const Diagnostic& d : messages)
      if (is_error(d)) plain += render(d, made.sources);
    return answer_of(PacketState::failed, problem, told, plain, false,
                     read_as(made.readable ? fingerprint(made.project_mark) : "", made.drawings));
  }

  const std::string packet = out_.file(project.stem), name = file_name_of(project.stem);
  PacketRecord record{project.path, fingerprint(made.project_mark), made.drawings, {}, made.pages, made.about};
  std::vector<FileToWrite> files;
  const auto add = [&](const std::string& ending, const std::string& bytes) {
    files.push_back({packet + ending, bytes});
    record.files.push_back({name + ending, sha256(bytes)});
  };
  add(".figures.json", made.figures_json);
  if (!made.calendar.empty()) add(".work.ics", made.calendar);
  add(".pdf", made.pdf);
  const std::optional<PacketRecord> before = out_.read_record(project.stem);
  // The record goes before the PDF: where the power is cut between them, the PDF is the old one and the record says that it is not.
  const std::string record_text = text_of(record);
  files.insert(files.end() - 1, {out_.record(project.stem), record_text});
  const bool new_lays = order_.keep_lays && lays.changed();
  if (new_lays) files.insert(files.begin(), {out_.lays(project.stem), lays.text()});
  std::optional<FileFault> fault = out_.make_folder_of(project.stem);
  if (!fault && new_lays) fault = make_folders(folder_of(out_.lays(project.stem)));
  if (!fault) fault = make_folders(folder_of(out_.record(project.stem)));
  if (!fault) fault = write_whole(files);
  if (fault) return answer_of(PacketState::failed, fault->sentence, told, "", true);
  // A companion that the new packet no longer has.
  if (before)
    for (const MadeFile& old : before->files)
      if (std::none_of(record.files.begin(), record.files.end(), [&](const MadeFile& now) { return now.name == old.name; }))
        if (const auto bytes = read_below(folder_of(packet), old.name, kLargestOutput);
            bytes.ok() && sha256(*bytes.value) == old.hash)
          remove_file(folder_of(packet) + "/" + old.name);
  return answer_of(PacketState::made, "", told, record_text);
}

PacketResult Workroom::result_of(const FoundProject& project, const WorkerAnswer& answer) const {
  PacketResult result;
  result.project = project;
  result.unwritten = answer.machine;
  const auto lines = lines_of_fields(answer.bytes);
  if (!answer.whole) {
    result.problem = answer.fault;
    const auto ahead = lines_of_fields(answer.ahead);
    if (answer.alike && ahead && ahead->size() == 1) {
      result.stopped = true;
      result.fingerprint = ahead->front().front();
      result.drawings.assign(ahead->front().begin() + 1, ahead->front().end());
    }
  } else if (!lines || lines->size() != 2 || lines->front().size() != 5 || lines->back().empty()) {
    result.problem = "The worker gave no answer that could be understood.";
  } else {
    const FieldLine& said = lines->front();
    result.state = said[0] == word_for(PacketState::made) ? PacketState::made : PacketState::failed;
    result.problem = said[1];
    result.messages = said[2];
    if (result.state == PacketState::made) result.record = record_of(said[3]);
    else result.errors = said[3];
    result.unwritten = said[4] == "unwritten";
    result.fingerprint = lines->back().front();
    result.drawings.assign(lines->back().begin() + 1, lines->back().end());
  }
  if (result.state == PacketState::failed) result.record = older_packet(project);
  return result;
}

std::vector<std::string> Workroom::problems_of_gone(const FoundProjects& found) const {
  if (!found.faults.empty() || order_.shards > 0) return {};
  std::set<std::string> there;
  for (const FoundProject& project : found.projects) there.insert(project.stem);
  std::vector<std::string> gone = out_.problems_told();
  std::erase_if(gone, [&](const std::string& stem) { return there.count(stem) == 1; });
  return gone;
}

std::vector<std::string> Workroom::clear_problems_of_gone(const FoundProjects& found) const {
  std::vector<std::string> faults;
  for (const std::string& stem : problems_of_gone(found))
    if (const auto fault = out_.clear_problems(stem)) faults.push_back(fault->sentence);
  return faults;
}

void Workroom::note_stopped(const PacketResult& result) const {
  const std::string path = out_.stopped(result.project.stem);
  if (!result.stopped) {
    if (exists(path)) remove_file(path);
    return;
  }
  const StoppedRecord now{result.project.path, result.fingerprint, ceilings_mark(order_), result.drawings, result.problem};
  const auto before = out_.read_stopped(result.project.stem);
  if (before && before->project == now.project && before->fingerprint == now.fingerprint && before->ceilings == now.ceilings)
    return;
  // Where it cannot be written it is tried once more by the next run: no harm.
  if (!make_folders(folder_of(path))) write_whole({{path, text_of(now)}});
}

std::optional<FileFault> Workroom::tell_beside(const PacketResult& result) const {
  note_stopped(result);
  if (result.state != PacketState::failed) return out_.clear_problems(result.project.stem);
  if (!order_.problem_files || file_name_of(out_.problems(result.project.stem)).size() > NAME_MAX)
    return std::nullopt;  // told in the log alone
  const std::string problem = result.project.path + ": " + result.problem + "\n";
  return out_.write_problems(result.project.stem, problem + (result.errors.empty() ? "" : "\n" + result.errors));
}

}  // namespace gownsheaf
