#include "archive/archive.h"
#include "archive/events.h"
#include "archive/tables/rows.h"

#include <algorithm>

namespace thawslip::archive {
namespace {

/// The station's last command that counts: what was noted of bags after their first moment, for
/// that is when they were labelled. 0: none.
std::int64_t last_command_of(Connection& connection, const std::string& station) {
    auto& row =
        connection
            .statement("SELECT coalesce(max(e.seq), 0) FROM bag_event e WHERE e.station = ?1 AND "
                       "e.undoes = 0 AND e.seq > 0 AND EXISTS (SELECT 1 FROM bag_event f WHERE "
                       "f.bag = e.bag AND f.ordered < e.ordered) AND NOT EXISTS (SELECT 1 FROM "
                       "bag_event u WHERE u.bag = e.bag AND u.undoes = e.seq AND u.station = ?1)")
            .with(station);
    row.next();
    return row.integer(0);
}

std::vector<std::int64_t> bags_of_command(Connection& connection, const std::string& station,
                                          std::int64_t seq) {
    auto& rows = connection
                     .statement("SELECT e.bag FROM bag_event e JOIN bag_id i ON i.bag = "
                                "e.bag AND i.newest = 1 WHERE e.station = ? AND e.seq = ? AND "
                                "e.undoes = 0 AND e.seq > 0 ORDER BY i.id")
                     .with(station)
                     .with(seq);
    std::vector<std::int64_t> bags;
    while (rows.next()) {
        bags.push_back(rows.integer(0));
    }
    return bags;
}

BagEvent event_of_command(Connection& connection, std::int64_t bag, const std::string& station,
                          std::int64_t seq) {
    const auto events = events_of(connection, bag);
    const auto found = std::ranges::find_if(events, [&](const BagEvent& event) {
        return event.station == station && event.seq == seq;
    });
    return found == events.end() ? BagEvent{} : *found;
}

struct NotedBag {
    std::int64_t bag = 0;
    std::string id;
};

/// A bag and those that were renamed to it, whatever was renamed to those.
std::vector<NotedBag> with_renamed(Connection& connection, std::int64_t bag) {
    auto& rows = connection
                     .statement("WITH RECURSIVE same (bag) AS (SELECT ?1 UNION SELECT b.id FROM "
                                "bag b JOIN bag_id i ON i.id = b.joined JOIN same s ON s.bag = "
                                "i.bag WHERE b.joined <> '' AND b.state = 'renamed') SELECT "
                                "s.bag, i.id FROM same s JOIN bag_id i ON i.bag = s.bag AND "
                                "i.newest = 1")
                     .with(bag);
    std::vector<NotedBag> bags;
    while (rows.next()) {
        bags.push_back({rows.integer(0), rows.text(1)});
    }
    return bags;
}

bool is_undone(const std::vector<BagEvent>& events, const BagEvent& event) {
    return std::ranges::any_of(events, [&event](const BagEvent& other) {
        return other.undoes != 0 && other.undoes == event.seq && other.station == event.station;
    });
}

/// What a bag takes over from another that it is: where that was taken out, eaten or moved.
BagChange left_over(Connection& connection, std::int64_t from, std::int64_t to) {
    auto& rows = connection
                     .statement("SELECT a.state, a.place, b.state, b.place FROM bag a, bag b WHERE "
                                "a.id = ? AND b.id = ?")
                     .with(from)
                     .with(to);
    BagChange change;
    if (rows.next()) {
        const auto state = state_of(rows.text(0));
        if (state != State::Frozen && state_of(rows.text(2)) == State::Frozen) {
            change.state = state;
        }
        if (!rows.is_nothing(1) && rows.is_nothing(3)) {
            change.place = rows.text(1);
        }
    }
    return change;
}

} // namespace

void Archive::join(std::span<const std::pair<std::string, std::string>> pairs,
                   const std::string& at, const Station& station) {
    auto& connection = *connection_;
    const Question question{connection};
    Transaction transaction{connection};
    const auto seq = next_seq(connection, station.name);
    for (const auto& [before, now] : pairs) {
        const auto from = living_bag(connection, before);
        const auto to = living_bag(connection, now);
        if (from == 0 || to == 0 || from == to) {
            continue;
        }
        const auto change = left_over(connection, from, to);
        if (change.state || change.place) {
            add_event(connection, to, change, at, station, seq);
        }
        add_event(connection, from, {State::Renamed, std::nullopt, now}, at, station, seq);
    }
    transaction.commit();
}

std::int64_t Archive::last_command(const Station& station) {
    const Question question{*connection_};
    return last_command_of(*connection_, station.name);
}

std::vector<UndoneBag> Archive::undo(const std::string& at, const Station& station,
                                     std::optional<std::int64_t> only) {
    auto& connection = *connection_;
    const Question question{connection};
    Transaction transaction{connection};
    const auto command = last_command_of(connection, station.name);
    if (only && command != *only) {
        return {};
    }
    const auto bags = bags_of_command(connection, station.name, command);
    std::vector<UndoneBag> undone;
    for (const auto bag : bags) {
        undone.push_back({bag_as_it_is(connection, bag),
                          {},
                          event_of_command(connection, bag, station.name, command)});
    }
    const auto seq = next_seq(connection, station.name);
    for (const auto bag : bags) {
        add_event(connection, bag, {std::nullopt, std::nullopt, {}, command}, at, station, seq);
    }
    for (std::size_t i = 0; i < bags.size(); ++i) {
        undone[i].after = bag_as_it_is(connection, bags[i]);
    }
    transaction.commit();
    return undone;
}

std::vector<PastEvent> Archive::history(const std::string& id) {
    auto& connection = *connection_;
    const Question question{connection};
    std::vector<PastEvent> past;
    for (const auto& bag : with_renamed(connection, living_bag(connection, id))) {
        const auto events = events_of(connection, bag.bag);
        for (const auto& event : events) {
            past.push_back({bag.id, event, is_undone(events, event)});
        }
    }
    std::ranges::stable_sort(past, {}, [](const PastEvent& one) { return one.event.ordered; });
    return past;
}

} // namespace thawslip::archive
