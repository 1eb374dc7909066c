#pragma once

#include "app/commands.h"
#include "app/day_files.h"
#include "app/job.h"
#include "wording/door_list.h"

#include <span>
#include <vector>

namespace thawslip::app {

/// The day sheet and shopping list of each day, and the door list of all their bags: which of them
/// `kinds` names.
Job list_job(const Days& days, ListKinds kinds, const Settings& settings);

/// Dishes that came from elsewhere may have names that no face can set: one of them must not keep
/// all the others off the list. Has "?" stand for what cannot be set, and says so.
void make_settable(std::vector<wording::DoorRow>& rows, Console console);

/// Every bag of the days, as the door list takes it.
std::vector<wording::DoorRow> door_rows(const Days& days);

/// The door list of these bags, wherever they are known from.
Job door_list_job(std::span<const wording::DoorRow> rows, const Settings& settings);

/// Prints the door list of these bags where `options` say; `options.days` is not used.
ExitStatus print_door_list(std::span<const wording::DoorRow> rows, const PrintOptions& options,
                           const Settings& settings, Console console);

/// Adds a list to a job; `day` is the one whose description its faults are told of.
void add_list(Job& job, std::size_t day, wording::Print list);

/// The stock that lists are printed on where none is named: a whole sheet of the paper that is set.
std::string list_stock(const Settings& settings);

} // namespace thawslip::app
