#include "app/help/tasks.h"

#include "base/letters.h"
#include "base/split.h"

#include <algorithm>
#include <array>

namespace thawslip::app {
namespace {

// The figures of the power cut: FoodSafety.gov, "Food Safety During Power Outage" (as quoted in The
// Anniston Star, 29 October 2020; read in that copy).
constexpr std::array<Task, 17> tasks = {{
    {"a day is to be written down", "new begin start first file description packing many dishes",
     "thawslip new saturday.toml  # asks how many dishes, and for each what it needs\n"
     "thawslip check saturday.toml  # all that is wrong with it or missing",
     "Put words in straight double quotes; a date stands without."},
    {"the labels are to be printed", "print sheet printer paper size trial plain ruler",
     "thawslip labels saturday.toml --trial --print  # on plain paper first\n"
     "thawslip labels saturday.toml --print",
     "At 100 %, never \"fit to page\"; stick them on dry bags before they are filled."},
    {"the printer jammed", "jam stuck torn crooked part half broke off again from",
     "thawslip labels saturday.toml --from K7Q-2M4-9XW --print  # from this bag on\n"
     "thawslip labels saturday.toml --bag 3-5 --print",
     ""},
    {"a sheet is half used", "left over cells spoiled gone skip waste start",
     "thawslip labels saturday.toml --first-cell next --print  # where the last print stopped\n"
     "thawslip labels saturday.toml --first-cell 4 --skip 6,8 --print",
     ""},
    {"there is one bag more than planned", "more extra additional bags another late forgot added",
     "thawslip labels saturday.toml --only-new --print  # after raising `bags` in the file",
     "The bags that have labels keep their ids."},
    {"a label came off or cannot be read", "lost reprint wet smeared missing fell unreadable code",
     "thawslip freezer find lentil  # which bags there are, and their ids\n"
     "thawslip reprint K7Q-2M4-9XW --print",
     "Not sure which bag it is? Do not guess: what nobody can name is not eaten."},
    {"somebody cooks from a bag", "read scan photo photograph phone steps how cook what is this id",
     "thawslip read photo.jpg\n"
     "thawslip read K7Q-2M4-9XW  # by the id beside the code",
     "Any phone shows the code's text without Thawslip."},
    {"dinner is at a certain time", "plan when thaw start eat tonight tomorrow calendar late",
     "thawslip plan lentil stew --eat \"2026-12-03 18:30\"\n"
     "thawslip plan lentil stew --eat \"2026-12-03 18:30\" -o plan.pdf  # drawn to scale",
     "Where it is too late to thaw as the label says, it says what is still safe."},
    {"nobody knows what to eat next", "next choose oldest first week propose soonest use up",
     "thawslip freezer next 5\n"
     "thawslip freezer list  # all, earliest date first",
     ""},
    {"a bag is taken out, eaten or thrown away",
     "out eaten discarded gone used taken finished empty",
     "thawslip freezer out lentil stew\n"
     "thawslip freezer eaten lentil stew\n"
     "thawslip freezer discarded K7Q-2M4-9XW",
     ""},
    {"something was noted by mistake", "undo wrong slip mistake back revert history",
     "thawslip freezer undo  # takes the last change back\n"
     "thawslip freezer history K7Q-2M4-9XW",
     ""},
    {"a label was printed for a bag that was never filled", "never filled unused spare not packed",
     "thawslip freezer never-filled K7Q-2M4-9XW", ""},
    {"a dish has another name now", "renamed name spelling called typo changed",
     "thawslip freezer renamed \"Bean bake\" \"Smoky bean bake\"",
     "A slip of the keyboard is noticed without that."},
    {"a guest has an allergy", "allergy allergens allergic nuts milk gluten guest contains without",
     "thawslip freezer list --without \"milk, walnut\"",
     "It lists bags on which no label names it; that is no promise. Read the label, ask who "
     "packed."},
    {"the power was cut", "power outage blackout freezer broke warm thawed electricity failure",
     "thawslip freezer list  # what is inside, before the door is opened",
     "Keep the door shut: a full freezer stays cold for about 48 hours, a half-full one for 24. "
     "What "
     "has ice crystals or is at 40 °F (4 °C) or below may be frozen again or cooked; discard "
     "perishable food that was above that for over 2 hours (FoodSafety.gov, Food Safety During "
     "Power "
     "Outage). The rules of your local food authority come first."},
    {"the archive is to be safe, or on another machine",
     "backup copy save move computer laptop merge",
     "thawslip archive backup copy.db\n"
     "thawslip archive restore copy.db\n"
     "thawslip archive merge other-kitchen.db",
     ""},
    {"commands are not for you", "page browser window menu mouse click screen form desk easy",
     "thawslip desk  # the same on a page in the browser",
     "Or pick Thawslip in the menu of programs."},
}};

std::vector<std::string> words_in(std::string_view text) {
    return searchable_words(lower(text));
}

/// How many of the words asked for begin a word of the task's.
std::size_t hits(const Task& task, const std::vector<std::string>& asked) {
    const auto known = words_in(std::string{task.when} + " " + std::string{task.words});
    return static_cast<std::size_t>(std::ranges::count_if(asked, [&](const std::string& word) {
        return std::ranges::any_of(known,
                                   [&](const std::string& one) { return one.starts_with(word); });
    }));
}

} // namespace

std::span<const Task> all_tasks() {
    return tasks;
}

std::vector<Task> tasks_about(std::string_view words) {
    const auto asked = words_in(words);
    std::vector<Task> found;
    std::size_t most = 1;
    for (const auto& task : tasks) {
        const auto count = hits(task, asked);
        if (count > most) {
            found.clear();
            most = count;
        }
        if (count == most) {
            found.push_back(task);
        }
    }
    return found;
}

} // namespace thawslip::app
