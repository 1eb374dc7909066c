#pragma once

#include "service/print/printing.h"
#include "service/record/print_record.h"
#include "support/asked.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>
#include <string>

namespace thawslip::test_support {

/// Prints the labels of a day into the archive of a computer, as `labels` does.
inline void print_labels(FakeMachine& fake, const std::string& text,
                         const std::string& at = "2026-10-17T11:00:00",
                         const std::string& name = "day.toml") {
    const auto machine = machine_of(fake);
    auto archive = fake.open_archive();
    const auto printing =
        service::print({{{name, text, {}, "/days/" + name}}, {}}, service::What::Labels, {},
                       fake.settings, machine.surroundings(fake.settings));
    REQUIRE_MESSAGE(printing, to_text(printing.messages));
    archive.record(print_record(*printing.value, fake.settings, {}, {"here"}, at));
}

/// The day of the samples: five dishes, fourteen bags.
inline std::string orchard_sample() {
    return read_file(THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml");
}

/// A desk above an archive with the labels of a day.
struct PrintedDay {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};

    explicit PrintedDay(const std::string& text = orchard_sample()) { print_labels(fake, text); }

    /// What an answer says, after a look at its status.
    json::Json of(const http::Response& answer, int status = 200) const {
        CAPTURE(answer.body);
        CHECK(answer.status == status);
        return said(answer);
    }
    json::Json ask(const std::string& path, const json::Json& body, int status = 200) {
        return of(post(desk, path, body), status);
    }
    archive::Bag bag(const std::string& words) const {
        return fake.open_archive().find(words, archive::Which::All).front();
    }
};

} // namespace thawslip::test_support
