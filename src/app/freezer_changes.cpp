#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/bag_text.h"
#include "app/choose_bags.h"
#include "app/clock.h"
#include "app/station.h"
#include "json/answers.h"
#include "service/freezer/bags.h"
#include "service/freezer/freezer_state.h"
#include "service/freezer/renamed_dish.h"
#include "service/messages.h"

#include <fmt/format.h>
#include <ostream>
#include <set>

namespace thawslip::app {
namespace {

/// The archive, for whoever notes something in it; where there is none, that is said.
std::string bag_text(const archive::Bag& bag) {
    return fmt::format("{} {}, bag {} of {}", bag.id, bag.dish, bag.number, bag.of);
}

/// Says what came of a command that notes something of bags.
template <class Noted, class Line>
ExitStatus answer(const service::Outcome<std::vector<Noted>>& noted, const Line& line,
                  Console console) {
    console.err << to_text(noted.messages);
    if (noted && noted.value->empty() && noted.messages.all().empty()) {
        console.out << "nothing was noted\n";
    }
    for (const auto& one : noted.value.value_or(std::vector<Noted>{})) {
        console.out << line(one) << "\n";
    }
    return noted.messages.have_errors() ? ExitStatus::Refused : ExitStatus::Done;
}

std::string where_text(const archive::Bag& bag) {
    return bag.place.empty() ? "" : ", " + bag.place;
}

/// "eaten", "moved to cellar", "renamed": what an event says of a bag.
std::string change_text(const archive::BagEvent& event) {
    if (event.state == archive::State::Renamed) {
        return "known as " + event.joined;
    }
    const auto state = event.state ? std::string{shown_word(*event.state)} : std::string{};
    const auto place = event.place ? "moved to " + *event.place : std::string{};
    return state.empty() || place.empty() ? state + place : state + ", " + place;
}

std::string undone_text(const archive::UndoneBag& bag) {
    return fmt::format("{}: no longer {} ({}); again {}{}", bag_text(bag.before),
                       change_text(bag.undone), shown_moment(bag.undone.at),
                       shown_word(bag.after.state), where_text(bag.after));
}

} // namespace

ExitStatus freezer_set(const std::vector<std::string>& typed, WhichOfSeveral which,
                       archive::State state, const Settings& settings, Console console) {
    auto archive = needed_archive(settings, archive::Mode::Write, console);
    if (!archive) {
        return ExitStatus::Refused;
    }
    const auto line = [state](const archive::Bag& bag) {
        return fmt::format("{}: {}", bag_text(bag), shown_word(state));
    };
    return answer(
        service::note_state(*archive, typed, state, moment_now(), choose_bags(which, console)),
        line, console);
}

ExitStatus freezer_move(const std::vector<std::string>& typed, WhichOfSeveral which,
                        const std::string& place, const Settings& settings, Console console) {
    auto archive = needed_archive(settings, archive::Mode::Write, console);
    if (!archive) {
        return ExitStatus::Refused;
    }
    const auto line = [&place](const archive::Bag& bag) {
        return fmt::format("{}: {}{}", bag_text(bag), place,
                           bag.place.empty() || bag.place == place ? "" : ", was " + bag.place);
    };
    return answer(
        service::move_bags(*archive, typed, place, moment_now(), choose_bags(which, console)), line,
        console);
}

ExitStatus freezer_renamed(const std::string& before, const std::string& now,
                           const Settings& settings, Console console) {
    auto archive = needed_archive(settings, archive::Mode::Write, console);
    if (!archive) {
        return ExitStatus::Refused;
    }
    const auto renamed = service::rename_dish(*archive, before, now, moment_now());
    console.err << to_text(renamed.messages);
    if (!renamed) {
        return ExitStatus::Refused;
    }
    for (const auto& [old_bag, new_bag] : renamed.value->joined) {
        console.out << fmt::format("{} is {}; both ids are known\n", bag_text(old_bag),
                                   bag_text(new_bag));
    }
    for (const auto& bag : renamed.value->alone) {
        console.out << fmt::format("{} stays as it is: no bag of the new name has its number\n",
                                   bag_text(bag));
    }
    return ExitStatus::Done;
}

ExitStatus freezer_undo(const Settings& settings, Console console) {
    auto archive = needed_archive(settings, archive::Mode::Write, console);
    return archive ? answer(service::undo_last(*archive, moment_now()), undone_text, console)
                   : ExitStatus::Refused;
}

namespace {

/// A line of a bag's history, without its time.
std::string past_text(const archive::PastEvent& past, bool is_first, const archive::Bag& bag) {
    const auto& event = past.event;
    auto text = event.undoes != 0 ? "the change before was taken back"
                : is_first        ? "labelled"
                                  : change_text(event);
    if (past.is_undone) {
        text += " (taken back)";
    }
    return past.id == bag.id ? text : text + fmt::format(" (as {})", past.id);
}

void show_history(archive::Archive& archive, const archive::Bag& bag, std::ostream& out) {
    out << fmt::format("{}, made {}, {} {}{}\n", bag_text(bag), kitchen::to_iso(bag.made),
                       date_head(bag), kitchen::to_iso(bag.keep_until), where_text(bag));
    std::set<std::string> begun; // ids whose first event was shown
    for (const auto& past : archive.history(bag.id)) {
        out << fmt::format("    {}  {}\n", shown_moment(past.event.at),
                           past_text(past, begun.insert(past.id).second, bag));
    }
}

} // namespace

ExitStatus freezer_history(const std::vector<std::string>& typed, AnswerAs answer,
                           const Settings& settings, Console console) {
    auto archive = needed_archive(settings, archive::Mode::Read, console);
    if (!archive) {
        return ExitStatus::Refused;
    }
    const auto bags = service::bags_meant(*archive, typed, archive::Which::All);
    console.err << to_text(bags.messages);
    for (const auto& bag : bags.value.value_or(std::vector<archive::Bag>{})) {
        if (answer == AnswerAs::Json) {
            console.out << json::history(bag, archive->history(bag.id)) << "\n";
        } else {
            show_history(*archive, bag, console.out);
        }
    }
    return bags ? ExitStatus::Done : ExitStatus::Refused;
}

} // namespace thawslip::app
