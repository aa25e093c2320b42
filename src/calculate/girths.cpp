#include "calculate/girths.h"

#include "calculate/fitting_share.h"
#include "calculate/new_figure.h"

namespace gownsheaf {

void add_girths(const Project& project, Figures& figures) {
  const ShownIn in = shown_in(project);
  for (const auto& [name, ease] : project.ease) {
    const auto body = project.measures.girths_and_lengths.find(name);
    if (!ease.known() || body == project.measures.girths_and_lengths.end() || !body->second.both.known()) continue;
    if (figures.find("girths/" + name + "/ease") == nullptr)
      NewFigure(figures, in, "girths", name, "ease").is(*ease).at(ease.at).from("", ease).written().add();
    if (figures.find("girths/" + name + "/finished") != nullptr) continue;
    const Length girth = *body->second.both;
    const bool less = *ease < Length{};
    NewFigure(figures, in, "girths", name, "finished")
        .is(girth + *ease)
        .at(ease.at)
        .from("measures/" + name)
        .from("girths/" + name + "/ease")
        .working("finished " + name, "body + ease",
                 worked(girth, in) + (less ? " − " + worked(-*ease, in) : " + " + worked(*ease, in)))
        .add();
  }
  for (const auto& [name, measure] : project.measures.girths_and_lengths) {
    const Sharing sharing = seams_across(project, name);
    if (!sharing.known) continue;
    const Length one = in == ShownIn::inches ? Length::inches(1) : Length::cm(1);
    const std::string edges = NewFigure(figures, in, "sharing", name, "edges").is(sharing.edges).plain_input("seams").add().key;
    NewFigure(figures, in, "sharing", name, "each edge")
        .is(one.times(1, sharing.edges))
        .from(edges)
        .working("of each " + worked(one, in) + " at the " + name, "1 / edges",
                 worked(one, in) + " / " + whole_number(sharing.edges))
        .add();
  }
}

}  // namespace gownsheaf
