#pragma once

#include "desk/day_list.h"
#include "desk/drawings.h"
#include "desk/machine.h"
#include "desk/shelf.h"
#include "desk/tickets.h"
#include "json/value.h"

#include <map>
#include <mutex>
#include <string>
#include <utility>

namespace thawslip::desk {

/// What one run of the desk knows from one request to the next.
struct Session {
    Machine machine;
    /// Held while anything but a picture is looked at: routes that are not `alone` take it as soon
    /// as they ask the machine for more.
    std::mutex one_at_a_time;
    Shelf shelf = {};
    DayList days = {};
    Drawings drawings = {};
    std::mutex one_frame; ///< held while a camera's frame is looked at
    Tickets tickets = {};
    /// The kinds of food as the page has them, by list and language: to gather them takes long.
    std::map<std::pair<std::string, std::string>, json::Json> foods = {};
};

} // namespace thawslip::desk
