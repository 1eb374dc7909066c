#include "base/list.h"
#include "service/archive/archive_folder.h"
#include "service/archive/toml_text.h"

#include <fmt/format.h>
#include <vector>

namespace thawslip::service {
namespace {

using archive::Contents;

std::string name_of_day(const Contents::Day& day) {
    return fmt::format("{:04}-{:02}", day.lineage, day.revision);
}

std::string name_of_print(std::size_t index) {
    return fmt::format("{:04}", index + 1);
}

std::string text_of(const archive::PackageRecord& package) {
    auto text = "\n[[package]]\n" + toml_line("dish", package.dish) +
                toml_line("words", package.words) +
                fmt::format("made = {}\nkeep_until = {}\nbasis = \"{}\"\nservings = {}\n",
                            kitchen::to_iso(package.made), kitchen::to_iso(package.keep_until),
                            archive::word_of(package.basis), package.servings);
    if (package.weight) {
        text += fmt::format("grams = {}\n", package.weight->grams);
    }
    if (package.food) {
        text += toml_line("allergens", package.food->allergens) +
                toml_line("classes", package.food->classes);
    }
    if (package.thaw) {
        text += fmt::format("thaw = \"{}\"\n", archive::word_of(package.thaw->method));
        if (package.thaw->lead) {
            text += fmt::format("thaw_minutes = {}\n", package.thaw->lead->count());
        }
    }
    if (!package.place.empty()) {
        text += toml_line("place", package.place);
    }
    const auto& batch = package.batch;
    return text +
           fmt::format("described_bags = {}\nbatch = {}\n", package.bags.size(), batch.number) +
           (batch.size == 0 ? "" : fmt::format("size = {}\n", batch.size)) +
           toml_line("batch_kitchen", batch.kitchen) +
           fmt::format("kitchen_number = {}\n", batch.kitchen_number) +
           toml_line("origin", package.origin);
}

/// What an event says of the bag; what it does not say is left out.
std::string change_text(const archive::BagEvent& event) {
    std::string text;
    if (event.state) {
        text += fmt::format("state = \"{}\", ", word_of(*event.state));
    }
    if (event.place) {
        text += fmt::format("place = {}, ", toml_string(*event.place));
    }
    if (!event.joined.empty()) {
        text += fmt::format("joined = {}, ", toml_string(event.joined));
    }
    return event.undoes != 0 ? text + fmt::format("undoes = {}, ", event.undoes) : text;
}

std::string text_of(const archive::BagEvent& event) {
    return fmt::format("        {{ {}at = {}, ordered = {}, station = {}, seq = {}, clock = {}, "
                       "offset = {}, boot = {}, uptime = {} }},\n",
                       change_text(event), toml_string(event.at), event.ordered,
                       toml_string(event.station), event.seq, event.clock, event.offset,
                       toml_string(event.boot), event.uptime);
}

std::string text_of(const Contents::Bag& bag) {
    const auto text_of_event = [](const archive::BagEvent& event) { return text_of(event); };
    return fmt::format("    {{ ids = [{}], number = {}, event = [\n{}    ] }},\n",
                       joined(bag.ids, ", ", toml_string), bag.number,
                       joined(bag.events, "", text_of_event));
}

/// The bags of each package of a day, in the order of the contents.
using BagLines = std::vector<std::string>;

std::string text_of(const Contents::Day& day, const BagLines& bags) {
    const auto& record = day.record;
    auto text = fmt::format("description = {}\nrevision = {}\nhash = \"{:016x}\"\n", day.lineage,
                            day.revision, kitchen::fnv_1a(record.description)) +
                toml_line("recorded", day.recorded) + fmt::format("ordered = {}\n", day.ordered) +
                fmt::format("made = {}\n", kitchen::to_iso(record.made)) +
                toml_line("kitchen", record.kitchen) + toml_line("file", record.file) +
                toml_line("station", record.station);
    for (std::size_t i = 0; i < record.packages.size(); ++i) {
        text += text_of(record.packages[i]) + "bag = [" + (bags[i].empty() ? "" : "\n") + bags[i] +
                "]\n";
    }
    return text;
}

std::string text_of(const Contents::Print& print, const std::vector<std::string>& day_names) {
    const auto days = mapped(print.days, [&](std::size_t day) { return day_names[day]; });
    auto text = toml_line("what", print.setup.what) + toml_line("days", days) +
                toml_line("first_at", print.first_at) + toml_line("last_at", print.last_at) +
                toml_line("stock", print.setup.stock) + toml_line("layout", print.setup.layout) +
                toml_line("settings", print.setup.settings) + toml_line("look", print.setup.look);
    for (const auto& file : print.setup.files) {
        text += "\n[[file]]\n" + toml_line("name", file.name);
    }
    for (const auto& [key, at, station] : print.keys) {
        text += "\n[[printed]]\n" + toml_line("key", key) + toml_line("at", at) +
                toml_line("station", station);
    }
    return text;
}

using Files = std::vector<ArchiveFile>;

std::vector<std::string> add_days(const Contents& contents, Files& files) {
    auto bags = mapped(contents.days, [](const Contents::Day& day) {
        return BagLines(day.record.packages.size());
    });
    for (const auto& bag : contents.bags) {
        bags[bag.day][static_cast<std::size_t>(bag.position - 1)] += text_of(bag);
    }
    std::vector<std::string> names;
    for (std::size_t i = 0; i < contents.days.size(); ++i) {
        const auto& day = contents.days[i];
        names.push_back(name_of_day(day));
        const auto place = "days/" + names.back();
        files.push_back({place + "/as-written.toml", day.record.description});
        files.push_back({place + "/record.toml", text_of(day, bags[i])});
    }
    return names;
}

std::vector<std::string> add_prints(const Contents& contents,
                                    const std::vector<std::string>& day_names, Files& files) {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < contents.prints.size(); ++i) {
        const auto& print = contents.prints[i];
        names.push_back(name_of_print(i));
        const auto place = "prints/" + names.back();
        files.push_back({place + "/print.toml", text_of(print, day_names)});
        for (std::size_t f = 0; f < print.setup.files.size(); ++f) {
            files.push_back(
                {fmt::format("{}/file-{}.toml", place, f + 1), print.setup.files[f].text});
        }
    }
    return names;
}

} // namespace

std::vector<ArchiveFile> archive_files(const Contents& contents) {
    Files files;
    const auto days = add_days(contents, files);
    const auto prints = add_prints(contents, days, files);
    files.push_back(
        {"archive.toml", "# An archive of thawslip, exported. Read it back with: thawslip "
                         "archive import FOLDER\nformat = 3\n" +
                             toml_line("days", days) + toml_line("prints", prints)});
    return files;
}

} // namespace thawslip::service
