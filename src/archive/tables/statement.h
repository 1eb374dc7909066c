#pragma once

#include "archive/tables/database.h"
#include "archive/tables/server/server.h"

#include <variant>

namespace thawslip::archive {

/// One statement of an open archive, by whichever engine it is kept: bind from the first parameter
/// on, step through the rows. Prepared once, used often; `again()` makes it ready for the next use.
class Statement {
public:
    explicit Statement(FileStatement statement) : engine_{std::move(statement)} {}
    explicit Statement(ServerStatement statement) : engine_{std::move(statement)} {}

    /// Ready for new values, wherever it stood.
    Statement& again() noexcept {
        if (auto* file = std::get_if<FileStatement>(&engine_)) {
            file->again();
        } else if (auto* server = std::get_if<ServerStatement>(&engine_)) {
            server->again();
        }
        return *this;
    }
    Statement& with(std::int64_t value) { return bound(value); }
    Statement& with(int value) { return bound(std::int64_t{value}); }
    Statement& with(double value) { return bound(value); }
    Statement& with(std::string_view text) { return bound(text); }
    Statement& with(const std::string& text) { return bound(std::string_view{text}); }
    Statement& with(const char* text) { return bound(std::string_view{text}); }
    Statement& with_bytes(std::string_view bytes) {
        return chained([bytes](auto& engine) { engine.with_bytes(bytes); });
    }
    Statement& with_nothing() {
        return chained([](auto& engine) { engine.with_nothing(); });
    }

    /// \returns whether there is a row
    bool next() {
        return std::visit([](auto& engine) { return engine.next(); }, engine_);
    }
    /// For what gives no rows. Inside a transaction what fails may be thrown by what is asked next.
    void run() {
        std::visit([](auto& engine) { engine.run(); }, engine_);
    }
    /// Says of a question that it will be asked with these values: many of a server's are answered
    /// in one round trip then, and a file is asked later. In a transaction, and before it changes
    /// what the question is about; behind that, it is asked again.
    void ahead() {
        std::visit([](auto& engine) { engine.ahead(); }, engine_);
    }

    std::int64_t integer(int column) const {
        return std::visit([column](const auto& engine) { return engine.integer(column); }, engine_);
    }
    double real(int column) const {
        return std::visit([column](const auto& engine) { return engine.real(column); }, engine_);
    }
    /// Of a text or of bytes.
    std::string text(int column) const {
        return std::visit([column](const auto& engine) { return engine.text(column); }, engine_);
    }
    bool is_nothing(int column) const {
        return std::visit([column](const auto& engine) { return engine.is_nothing(column); },
                          engine_);
    }

private:
    template <class Do>
    Statement& chained(const Do& action) {
        std::visit(action, engine_);
        return *this;
    }
    template <class Value>
    Statement& bound(Value value) {
        return chained([value](auto& engine) { engine.with(value); });
    }

    std::variant<FileStatement, ServerStatement> engine_;
};

} // namespace thawslip::archive
