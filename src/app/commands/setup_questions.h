#pragma once

#include "base/result.h"

#include <functional>
#include <iosfwd>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace thawslip::app {

/// What is asked, and what an empty answer means.
struct SetupQuestion {
    std::string text;     ///< "Paper, letter or a4"
    std::string proposed; ///< "a4"
    std::string because;  ///< "as the locale de_DE has it"; may be empty
};

/// An answer as it is taken, or what is wrong with it.
using Answer = Result<std::string, std::string>;

/// An option that says what cannot be, or answers that end too soon.
class WrongAnswer : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

enum class Echo { No, Yes };

/// Questions that are asked one after the other and answered in lines.
class Questions {
public:
    /// \param echo whether answers are shown behind the questions, where no terminal shows them
    /// \param language one of wording::shipped_languages(), in which is asked
    Questions(std::istream& answers, std::ostream& out, bool takes_proposals, Echo echo,
              std::string language)
        : answers_{answers}, out_{out},
          takes_proposals_{takes_proposals}, echo_{echo}, language_{std::move(language)} {}

    /// Asks in this language from now on.
    void speak(std::string language) { language_ = std::move(language); }
    /// A phrase of the table "setup", in the language in which is asked.
    std::string say(std::string_view phrase, const std::vector<std::string>& values = {}) const;

    /// What was told already, where that is not empty; else what is answered. A wrong answer is
    /// told and asked again. \throws WrongAnswer for what was told wrong
    std::string ask(const SetupQuestion& question, const std::string& told,
                    const std::function<Answer(const std::string&)>& read);
    bool agrees(const std::string& question, bool proposed);

private:
    std::string line(const SetupQuestion& question);

    std::istream& answers_;
    std::ostream& out_;
    bool takes_proposals_;
    Echo echo_;
    std::string language_;
};

/// "1 kitchen, 2 office"; empty for none.
std::string numbered(std::span<const std::string> names);
/// The name that is meant by itself or by its number; nothing where it is none.
std::optional<std::string> named_by(const std::string& answer, std::span<const std::string> names);
std::optional<double> dots_in(const std::string& text); ///< from 72 to 4800
/// What is wrong with a text that should be dots per inch; empty where nothing is.
std::string dots_fault(const std::string& text);

} // namespace thawslip::app
