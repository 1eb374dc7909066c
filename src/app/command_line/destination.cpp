#include "app/command_line/parts.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>

namespace thawslip::app {
namespace {

/// What the parser gives for `--print` with no name; no print queue is called so.
const std::string usual_printer = "-";

} // namespace

void add_destination(CLI::App& command, std::string& output, std::optional<std::string>& printer,
                     const char* endings) {
    command
        .add_option("-o,--output", output,
                    fmt::format("what to write: {}; - for standard output", endings))
        ->option_text("FILE");
    auto name = std::make_shared<std::string>();
    command
        .add_flag("--print{" + usual_printer + "}", *name,
                  "print it, on this printer or the default one, at 100 % on the stock's paper")
        ->option_text("[PRINTER]")
        ->disable_flag_override(false)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeLast)
        ->each([&printer, name](const std::string& given) {
            printer = given == usual_printer ? "" : given;
        });
}

void add_overwrite(CLI::App& command, Overwrite& overwrite) {
    command.add_flag_callback(
        "--overwrite", [&overwrite] { overwrite = Overwrite::Yes; },
        "let further sheets (name-2.svg) take the place of others' files");
}

std::shared_ptr<AnswerAs> add_json(CLI::App& command, const char* about) {
    auto answer = std::make_shared<AnswerAs>(AnswerAs::Words);
    command.add_flag_callback(
        "--json", [answer] { *answer = AnswerAs::Json; }, about);
    return answer;
}

void require_destination(const std::string& output, const std::optional<std::string>& printer) {
    if (output.empty() && !printer) {
        throw CLI::RequiredError{"-o FILE or --print"};
    }
}

} // namespace thawslip::app
