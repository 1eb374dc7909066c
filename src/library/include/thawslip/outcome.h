#pragma once

#include <optional>
#include <string>
#include <vector>

/// What a program outside may use of Thawslip: values of the standard library in, values out, and
/// messages for people. Nothing here asks the clock or the environment; the same input gives the
/// same output. Functions throw std::runtime_error where the system fails (a disk, a missing face).
namespace thawslip {

/// Something to be reported to a person.
struct Message {
    enum class Kind { Error, Caution, Note };
    Kind kind = Kind::Error;
    std::string file;               ///< empty: it stands in no file
    int line = 0;                   ///< from 1; 0: no line is known
    int column = 0;                 ///< in characters, from 1
    std::string words;              ///< lower case, no full stop
    std::vector<std::string> hints; ///< what to write instead
    std::string text; ///< all of it, with the line it stands in marked, as a terminal shows it
};

/// What comes of a question: its value, unless an error stands against it, and what there is to
/// say.
template <class T>
struct Outcome {
    std::optional<T> value;
    std::vector<Message> messages;

    explicit operator bool() const { return value.has_value(); }
};

} // namespace thawslip
