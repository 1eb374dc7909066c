#pragma once

#include "archive/tables/connection.h"
#include "archive/values.h"

#include <cstdint>
#include <set>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

namespace thawslip::archive {

// What happened to bags, inside a transaction of the caller. `bag.state` and `bag.changed` repeat
// what follows from the events, so that lists are quick.

/// The seconds since 1970 of a local date and time as if it were UTC; 0 for any other text.
std::int64_t seconds_of(const std::string& at);

/// The number of the station's next command.
std::int64_t next_seq(Connection& connection, const std::string& station);
void ask_seq_ahead(Connection& connection, const std::string& station);

/// The moment that a bag is first known by.
struct FirstMoment {
    State state = State::Frozen;
    const std::string& at;
    const Station& station;
    std::int64_t seq = 0;
};
/// Adds a bag, which has no id yet, with its first event. \returns its row
std::int64_t insert_first_bag(Connection& connection, std::int64_t package, int number,
                              const FirstMoment& first);

/// Notes that something happened to a bag, after all that is known of it.
/// \param seq from next_seq, the same for all bags of one command
/// \returns whether the bag's state is another now: it is not where what is known of it is of the
/// last moment that there is (Most::ordered)
bool add_event(Connection& connection, std::int64_t bag, const BagChange& change,
               const std::string& at, const Station& station, std::int64_t seq);

/// Notes an event as it is; one that is known stays once. The state is for the caller to find.
void insert_event(Connection& connection, std::int64_t bag, const BagEvent& event);

/// Has the bag be in the state and at the place that its events say.
/// \returns whether the bag's state is another now
bool find_state(Connection& connection, std::int64_t bag);
/// The same of many, in few questions. \returns those whose state is another now
std::set<std::int64_t> find_states(Connection& connection, std::span<const std::int64_t> bags);

std::vector<BagEvent> events_of(Connection& connection, std::int64_t bag); ///< in their order
/// The same of all bags, by their rows: far sooner than bag by bag.
std::unordered_map<std::int64_t, std::vector<BagEvent>> events_by_bag(Connection& connection);
/// The same of the bags that one description's revisions describe.
std::unordered_map<std::int64_t, std::vector<BagEvent>> events_of_lineage(Connection& connection,
                                                                          int lineage);
void ask_events_ahead(Connection& connection, int lineage);

/// Whether a bag with this single event is in the state, and at the place, that it says.
bool says_state_alone(const BagEvent& event);

} // namespace thawslip::archive
