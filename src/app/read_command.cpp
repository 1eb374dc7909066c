#include "app/archive_place.h"
#include "app/choose_bags.h"
#include "app/clock.h"
#include "app/commands.h"
#include "app/photo_texts.h"
#include "app/shell_word.h"
#include "base/list.h"
#include "json/answers.h"
#include "kitchen/bag_id.h"
#include "service/freezer/bags.h"
#include "service/messages.h"
#include "service/read/message_text.h"
#include "service/read/read_bags.h"

#include <filesystem>
#include <fmt/format.h>
#include <iostream>
#include <ostream>

namespace thawslip::app {
namespace {

using Texts = service::Outcome<std::vector<std::string>>;

Texts refused(const std::string& message) {
    Texts texts;
    texts.messages.add_in_order({{Severity::Error, {"standard input"}, {}, message, {}}}, {});
    return texts;
}

Texts read_standard_input() {
    constexpr std::size_t most = std::size_t{64} * 1024; // a code holds 4 296 characters at most
    std::string typed;
    char c = 0;
    while (typed.size() <= most && std::cin.get(c)) {
        typed += c;
    }
    if (typed.size() > most) {
        return refused("this is more than any code holds");
    }
    auto texts = service::typed_texts(typed);
    return texts.empty() ? refused("there is no text") : Texts{std::move(texts), {}};
}

/// A name without a dot or a slash is no photograph's, unless there is such a file.
bool may_be_bag_id(const std::string& argument) {
    std::error_code error;
    return argument.find_first_of("./") == std::string::npos &&
           !std::filesystem::exists(argument, error);
}

struct InWords {
    const wording::Style& style;

    std::string operator()(const code::Message& message) const {
        return service::message_text(message, today(), style);
    }
    std::string operator()(const service::LaterWords& later) const {
        return later.text + "\n" + style.say("standing.local-rules") + "\n";
    }
};

struct InJson {
    const wording::Style& style;

    std::string operator()(const code::Message& message) const {
        return json::message(message, today(), style) + "\n";
    }
    std::string operator()(const service::LaterWords& later) const {
        return json::text(later.text) + "\n";
    }
};

/// Prints of several bags, parted as the form of the answer wants it.
ExitStatus show(const service::Readings& readings, AnswerAs answer, const wording::Style& style,
                Console console) {
    console.err << to_text(readings.messages);
    bool is_first = true;
    for (const auto& reading : readings.bags) {
        console.out << (answer == AnswerAs::Json
                            ? std::visit(InJson{style}, reading)
                            : (is_first ? "" : "\n") + std::visit(InWords{style}, reading));
        is_first = false;
    }
    return readings.bags.empty() ? ExitStatus::Refused : ExitStatus::Done;
}

std::vector<std::string> ids_of(const service::Readings& readings) {
    std::vector<std::string> ids;
    for (const auto& reading : readings.bags) {
        if (const auto* message = std::get_if<code::Message>(&reading)) {
            ids.push_back(message->bag_id);
        }
    }
    return ids;
}

enum class IfBroken { Said, Quiet };

/// The archive for what is read without one too: labels say all that they say by themselves.
std::optional<archive::Archive> archive_beside(const Settings& settings, Console console,
                                               IfBroken if_broken) {
    const auto file = archive_file_if_known(settings);
    if (file.empty()) {
        return std::nullopt;
    }
    auto opened = archive::Archive::open(file, archive::Mode::Read);
    if (opened) {
        return std::move(opened).value();
    }
    if (if_broken == IfBroken::Said &&
        opened.fault().kind != archive::ArchiveFault::Kind::Missing) {
        console.err << fmt::format("caution: whether a label is the newest of its bag is not "
                                   "known: {}\n",
                                   opened.fault().message);
    }
    return std::nullopt;
}

/// What to do with what was read: plan it, and note it as out. Where the archive does not know the
/// bags, a plan can go by the photograph.
void say_next(const service::Readings& readings, const std::string& what, const Settings& settings,
              Console console) {
    auto archive = archive_beside(settings, console, IfBroken::Quiet);
    auto ids = ids_of(readings);
    const bool by_photo = what != "-" && std::filesystem::is_regular_file(what);
    bool any_gone = false;
    std::erase_if(ids, [&](const std::string& id) {
        const auto bag = id.empty() || !archive ? std::nullopt : archive->bag(id);
        any_gone = any_gone || (bag && service::is_gone(*bag));
        return !bag || service::is_gone(*bag);
    });
    if (!ids.empty()) {
        const auto bags = joined(ids, ", ");
        console.err << fmt::format("next: thawslip plan {} --eat \"DATE TIME\"\nnext: thawslip "
                                   "freezer out {}  # once it is taken out\n",
                                   bags, bags);
    } else if (by_photo && !readings.bags.empty() && !any_gone) {
        console.err << fmt::format("next: thawslip plan {} --eat \"DATE TIME\"\n",
                                   shell_word(what));
    }
}

/// The bags in words or JSON and, in words, what to do next.
ExitStatus answer_with(const service::Readings& readings, AnswerAs answer, const std::string& what,
                       const Settings& settings, Console console) {
    const auto style = style_of(settings);
    const auto status = show(readings, answer, style, console);
    if (answer == AnswerAs::Words) {
        say_next(readings, what, settings, console);
    }
    return status;
}

} // namespace

ExitStatus read(const std::string& what, WhichOfSeveral which, AnswerAs answer,
                const Settings& settings, Console console) {
    const auto style = style_of(settings);
    std::optional<archive::Archive> archive;
    if (what != "-" && may_be_bag_id(what)) {
        archive = existing_archive(settings, archive::Mode::Read);
        const auto status = answer_with(service::read_bag(archive ? &*archive : nullptr, what,
                                                          style, choose_bags(which, console)),
                                        answer, what, settings, console);
        if (status != ExitStatus::Done && !kitchen::parse_bag_id(what)) {
            console.err << "    hint: there is no photograph of that name either\n";
        }
        return status;
    }
    const auto texts = what == "-" ? read_standard_input() : photo_texts(what);
    console.err << to_text(texts.messages);
    if (!texts) {
        return ExitStatus::Refused;
    }
    archive = service::name_bags(*texts.value) ? existing_archive(settings, archive::Mode::Read)
                                               : archive_beside(settings, console, IfBroken::Said);
    return answer_with(service::read_texts(archive ? &*archive : nullptr, *texts.value, style),
                       answer, what, settings, console);
}

} // namespace thawslip::app
