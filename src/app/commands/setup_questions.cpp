#include "app/commands/setup_questions.h"

#include "app/question.h"
#include "base/letters.h"
#include "base/list.h"
#include "base/number_in.h"
#include "wording/language.h"

#include <algorithm>
#include <fmt/format.h>
#include <istream>
#include <ostream>

namespace thawslip::app {

std::string Questions::say(std::string_view phrase, const std::vector<std::string>& values) const {
    return wording::shipped_language(language_).say("setup." + std::string{phrase}, values);
}

std::string Questions::line(const SetupQuestion& question) {
    const auto because = question.because.empty() ? "" : ", " + question.because;
    const auto answer = ask_on(answers_, out_)(
        fmt::format("{} [{}{}]:", question.text, question.proposed, because));
    if (!answer) {
        throw WrongAnswer{"the answers end before all is asked (--yes takes what is proposed)"};
    }
    if (echo_ == Echo::Yes) {
        out_ << *answer << "\n";
    }
    return answer->empty() ? question.proposed : *answer;
}

std::string Questions::ask(const SetupQuestion& question, const std::string& told,
                           const std::function<Answer(const std::string&)>& read) {
    if (!told.empty() || takes_proposals_) {
        auto answer = read(told.empty() ? question.proposed : told);
        if (!answer) {
            throw WrongAnswer{answer.fault()};
        }
        return std::move(answer).value();
    }
    while (true) {
        auto answer = read(line(question));
        if (answer) {
            return std::move(answer).value();
        }
        out_ << answer.fault() << "\n";
    }
}

bool Questions::agrees(const std::string& question, bool proposed) {
    const auto answer = ask({say("yes-or-no", {question}), say(proposed ? "yes" : "no"), {}}, {},
                            [](const std::string& text) -> Answer {
                                const auto word = lower(text);
                                if (is_one_of(word, {"yes", "y", "sí", "si", "s", "ja", "j"})) {
                                    return std::string{"yes"};
                                }
                                if (is_one_of(word, {"no", "n", "nein"})) {
                                    return std::string{"no"};
                                }
                                return Failure{std::string{"expected yes or no"}};
                            });
    return answer == "yes";
}

std::string numbered(std::span<const std::string> names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += fmt::format("{}{} {}", i == 0 ? "" : ", ", i + 1, names[i]);
    }
    return text;
}

std::optional<std::string> named_by(const std::string& answer, std::span<const std::string> names) {
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (answer == names[i] || answer == std::to_string(i + 1)) {
            return names[i];
        }
    }
    return std::nullopt;
}

std::optional<double> dots_in(const std::string& text) {
    const auto dots = number_in<double>(text);
    return dots && *dots >= 72.0 && *dots <= 4800.0 ? dots : std::nullopt;
}

std::string dots_fault(const std::string& text) {
    return dots_in(text)
               ? ""
               : fmt::format("\"{}\" is no number of dots per inch from 72 to 4800", text);
}

} // namespace thawslip::app
