#pragma once

#include "base/diagnostic.h"
#include "toml/document.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace thawslip::service {

/// Something to be told, and how it reads.
struct Message {
    Diagnostic what;
    std::string text; ///< `file:line:column: error: …` with the line it stands in and its hints
    friend bool operator==(const Message&, const Message&) = default;
};

/// All that a use case has to say besides its value, in the order in which it is told. What stands
/// in no file is a diagnostic without a place.
class Messages {
public:
    void error(std::string message, std::vector<std::string> hints = {});
    void caution(std::string message, std::vector<std::string> hints = {});
    void note(std::string message);

    /// Placed diagnostics in the order of their places, each with its line where one of `documents`
    /// is its file.
    void add(Diagnostics diagnostics, std::span<const toml::Document> documents);
    /// Diagnostics of one file, in the order given. \param source the file's text
    void add_in_order(const Diagnostics& diagnostics, std::string_view source);
    void add(const Messages& more);
    /// The same without those that are here already.
    void add_new(const Messages& more);

    const std::vector<Message>& all() const { return all_; }
    bool have_errors() const;

private:
    void add(Severity severity, std::string message, std::vector<std::string> hints);

    std::vector<Message> all_;
};

/// All of them, one after the other, as they read.
std::string to_text(const Messages& messages);

/// What comes of a use case: its value, unless an error stands against it, and what there is to
/// say.
template <class T>
struct Outcome {
    std::optional<T> value;
    Messages messages;

    explicit operator bool() const { return value.has_value(); }
};

} // namespace thawslip::service
