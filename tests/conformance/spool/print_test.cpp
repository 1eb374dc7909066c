// --print against a real CUPS server: what arrives where the printer would be, and what is said
// when nothing can.

#include "server.h"
#include "spool/printer.h"
#include "support/skip.h"
#include "support/variable.h"

#include <cups/cups.h>
#include <doctest/doctest.h>
#include <filesystem>
#include <memory>

using namespace thawslip::test_support;

namespace {

const std::string sample = THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml";

/// Whether a server is there; says the skip where there can be none here.
bool is_there(const Server& cups) {
    if (!cups.answers()) {
        skip("no CUPS server of our own can be started here: " + cups.log());
    }
    return cups.answers();
}

/// One server for all tests: to start it takes longer than all the rest. Nothing where there can
/// be none here, which is said.
Server* server() {
    static const auto one = std::make_unique<Server>();
    return is_there(*one) ? one.get() : nullptr;
}

/// A kitchen that has printed nothing, and whose usual printer is nobody's but the server's.
struct Kitchen {
    ScratchFolder folder;

    Outcome run_at(const std::string& address, const std::string& arguments) const {
        const auto home = shell_word(folder.path().string());
        return run("env -u LPDEST -u PRINTER HOME=" + home + " XDG_CONFIG_HOME=" + home +
                   " XDG_DATA_HOME=" + home + " TMPDIR=" + home + " CUPS_SERVER=" +
                   shell_word(address) + " " + THAWSLIP_PROGRAM + " " + arguments);
    }
    Outcome labels(const Server& to, const std::string& arguments) const {
        return run_at(to.address(), "labels " + shell_word(sample) + " " + arguments);
    }
    /// Takes what is proposed.
    Outcome setup_at(const std::string& address) const {
        write_file(folder / "answers", std::string(20, '\n'));
        return run_at(address, "setup --settings " + shell_word(folder / "settings.toml") + " <" +
                                   shell_word(folder / "answers"));
    }
    bool has_archive() const { return std::filesystem::exists(folder / "thawslip/archive.db"); }
};

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// The number in "note: printing on kitchen, job 7, at 100 %…"; 0 where there is none.
int job_in(const Outcome& outcome) {
    const auto at = outcome.err.find(", job ");
    return at == std::string::npos ? 0 : std::stoi(outcome.err.substr(at + 6));
}

} // namespace

TEST_CASE_FIXTURE(Kitchen,
                  "the printer gets the bytes of the file, unscaled, on the stock's paper") {
    auto* cups = server();
    if (cups == nullptr) {
        return;
    }
    const auto outcome = labels(*cups, "-o " + shell_word(folder / "labels.pdf") + " --print");
    CAPTURE(outcome.err);
    REQUIRE(outcome.status == 0);
    CHECK(has(outcome.err, "printing on kitchen, job "));
    CHECK(has_archive());
    const auto arrived = cups->arrived(job_in(outcome));
    CHECK(arrived.document == read_file(folder / "labels.pdf"));
    CHECK(arrived.title == "Bag labels 2026-10-17");
    CHECK(arrived.copies == "1");
    // What filters and printers are told: PWG 5100.13 (print-scaling), RFC 8011 (media, sides),
    // and the name of US letter paper from PWG 5101.1, table 6.
    const auto told = cups->attributes(job_in(outcome));
    CHECK(told.at("media") == "na_letter_8.5x11in");
    CHECK(told.at("print-scaling") == "none");
    CHECK(told.at("sides") == "one-sided");
    CHECK(told.at("document-format-supplied") == "application/pdf");
    CHECK(has(arrived.options, "print-scaling=none"));
    CHECK(has(arrived.options, "media=na_letter_8.5x11in"));
}

TEST_CASE_FIXTURE(Kitchen, "without -o the same pages are printed, and no file is left") {
    auto* cups = server();
    if (cups == nullptr) {
        return;
    }
    struct Case {
        const char* stock;
        const char* media;
    };
    const Case cases[] = {
        {"a4-2x4-99x68mm", "iso_a4_210x297mm"},
        {"roll-60x100mm", "custom_60x100mm_60x100mm"},
        {"card-a6", "iso_a6_105x148mm"}, // as it lies in the tray
    };
    for (const auto& c : cases) {
        CAPTURE(c.stock);
        const std::string command = c.stock == std::string{"card-a6"} ? "cards " : "labels ";
        const auto stock = " --no-archive --stock " + std::string{c.stock};
        const auto printed =
            run_at(cups->address(), command + shell_word(sample) + stock + " --print office");
        CAPTURE(printed.err);
        REQUIRE(printed.status == 0);
        CHECK(std::filesystem::is_empty(folder.path()));
        const auto written =
            run_at(cups->address(), command + shell_word(sample) + stock + " -o -");
        CHECK(cups->arrived(job_in(printed)).document == written.out);
        CHECK(cups->attributes(job_in(printed)).at("media") == c.media);
        CHECK(has(cups->attributes(job_in(printed)).at("job-printer-uri"), "/printers/office"));
    }
    CHECK_FALSE(has_archive());
}

TEST_CASE_FIXTURE(Kitchen, "the ruler page and a print from the archive are printed too") {
    auto* cups = server();
    if (cups == nullptr) {
        return;
    }
    const auto ruler = run_at(cups->address(), "stock ruler --paper a4 --print");
    CHECK(ruler.status == 0);
    CHECK(cups->arrived(job_in(ruler)).document.starts_with("%PDF-"));
    CHECK(cups->attributes(job_in(ruler)).at("media") == "iso_a4_210x297mm");
    REQUIRE(labels(*cups, "-o " + shell_word(folder / "labels.pdf")).status == 0);
    const auto again = run_at(cups->address(), "reprint lentil stew --print=kitchen");
    CAPTURE(again.err);
    CHECK(again.status == 0);
    CHECK(cups->arrived(job_in(again)).document.starts_with("%PDF-"));
}

TEST_CASE_FIXTURE(Kitchen, "an unknown printer is told with the nearest, before anything is done") {
    auto* cups = server();
    if (cups == nullptr) {
        return;
    }
    const auto outcome =
        labels(*cups, "-o " + shell_word(folder / "labels.pdf") + " --print kitchn");
    CHECK(outcome.status == 1);
    CHECK(has(outcome.err, "there is no printer called \"kitchn\""));
    CHECK(has(outcome.err, "did you mean \"kitchen\"?"));
    const auto far = labels(*cups, "--print attic");
    CHECK(has(far.err, "expected \"broken\", \"kitchen\" or \"office\""));
    CHECK(std::filesystem::is_empty(folder.path()));
}

TEST_CASE_FIXTURE(Kitchen, "a printer is also found by an instance that the cook has given it") {
    auto* cups = server();
    if (cups == nullptr) {
        return;
    }
    std::filesystem::create_directory(folder / ".cups"); // lpoptions(1): ~/.cups/lpoptions
    write_file(folder / ".cups/lpoptions", "Dest kitchen/thick print-quality=5\n");
    const auto printed = labels(*cups, "--no-archive --print kitchen/thick");
    CAPTURE(printed.err);
    CHECK(printed.status == 0);
    CHECK(has(printed.err, "note: printing on kitchen"));
    CHECK(cups->arrived(job_in(printed)).document.starts_with("%PDF"));
    const auto unknown = labels(*cups, "--no-archive --print kitchen/thin");
    CHECK(unknown.status == 1);
    CHECK(has(unknown.err, "there is no printer called \"kitchen/thin\""));
    const auto far = labels(*cups, "--no-archive --print attic");
    CHECK(has(far.err, "expected \"broken\", \"kitchen\" or \"office\"")); // it once, not twice
}

TEST_CASE_FIXTURE(Kitchen, "a refused job is told with the reason, and what was written is kept") {
    auto* cups = server();
    if (cups == nullptr) {
        return;
    }
    const auto outcome =
        labels(*cups, "-o " + shell_word(folder / "labels.pdf") + " --print broken");
    CHECK(outcome.status == 3);
    CHECK(has(outcome.err, "printer \"broken\" refused the job: "));
    CHECK(has(outcome.err, "not accepting jobs"));
    CHECK(read_file(folder / "labels.pdf").starts_with("%PDF-"));
    CHECK(has_archive()); // for the file is there
}

TEST_CASE_FIXTURE(Kitchen, "a job that nobody takes is not in the archive") {
    auto* cups = server();
    if (cups == nullptr) {
        return;
    }
    CHECK(labels(*cups, "--print broken").status == 3);
    CHECK(std::filesystem::is_empty(folder.path()));
}

TEST_CASE_FIXTURE(Kitchen, "where no server answers, that is said and nothing is done") {
    const auto outcome = run_at(folder / "nothing", "labels " + shell_word(sample) + " --print");
    CHECK(outcome.status == 3);
    CHECK(has(outcome.err, "no CUPS server answers at " + (folder / "nothing")));
    CHECK(has(outcome.err, "hint: start it, or write a file with -o"));
    CHECK(std::filesystem::is_empty(folder.path()));
}

TEST_CASE_FIXTURE(Kitchen, "where none of several printers is the usual one, they are named") {
    const Server cups{Queues::NoneIsUsual};
    if (!is_there(cups)) {
        return;
    }
    const auto outcome = labels(cups, "--print");
    CHECK(outcome.status == 1);
    CHECK(has(outcome.err, "error: no default printer is set\n    hint: name one with --print: "
                           "\"broken\", \"kitchen\" or \"office\"\n"));
    CHECK(std::filesystem::is_empty(folder.path()));
    CHECK(has(setup_at(cups.address()).out, "1 broken, 2 kitchen, 3 office;"));
}

TEST_CASE_FIXTURE(Kitchen, "a server without any printer is told, and setup asks about none") {
    const Server cups{Queues::None};
    if (!is_there(cups)) {
        return;
    }
    const auto outcome = labels(cups, "--print");
    CHECK(outcome.status == 3);
    CHECK(has(outcome.err, "error: the CUPS server at " + cups.address() + " has no printer\n"));
    const auto setup = setup_at(cups.address());
    CHECK(setup.status == 0);
    CHECK(has(setup.err, "the CUPS server at " + cups.address() + " has no printer"));
    CHECK_FALSE(has(setup.out, "Printer for "));
}

TEST_CASE_FIXTURE(Kitchen, "a computer that has no library to print with is told how to go on") {
    write_file(folder / "libcups.so.2", ""); // found first, and no library
    const Variable libraries{"LD_LIBRARY_PATH", folder.path().string()};
    const auto outcome = run_at("nowhere", "labels " + shell_word(sample) + " --print");
    CHECK(outcome.status == 3);
    CHECK(has(outcome.err, "error: this computer has no libcups, which prints\n"));
    CHECK(run_at("nowhere", "setup --yes").status == 0);
}

TEST_CASE_FIXTURE(Kitchen, "each job goes to the printer that the settings name for it") {
    auto* cups = server();
    if (cups == nullptr) {
        return;
    }
    const auto asked = run_at(cups->address(), "setup --yes --label-printer office");
    CAPTURE(asked.err);
    REQUIRE(asked.status == 0);
    const auto settings = folder / "thawslip/settings.toml";
    CHECK(has(read_file(settings), "printer  = \"office\""));
    write_file(settings, "[labels]\nprinter = \"office\"\ncopies = 2\n[finishing_cards]\n"
                         "printer = \"office\"\n[lists]\nprinter = \"office\"\n");
    const auto printed = labels(*cups, "--no-archive --print");
    CHECK(has(printed.err, "printing on office, job "));
    CHECK(has(printed.out, " labels on "));
    CHECK(has(labels(*cups, "--no-archive --print kitchen --copies 1").err, "printing on kitchen"));
    // Cards of the two kinds, each to its own.
    const auto cards =
        run_at(cups->address(), "cards " + shell_word(sample) + " --no-archive --print");
    CHECK(cards.status == 0);
    CHECK(has(cards.err, "printing on kitchen, job "));
    CHECK(has(cards.err, "printing on office, job "));
    CHECK(has(run_at(cups->address(), "lists " + shell_word(sample) + " --print").err,
              "printing on office"));
    CHECK(labels(*cups, "--no-archive --print").status == 0);
    const auto file = run_at(cups->address(), "cards " + shell_word(sample) + " --no-archive -o " +
                                                  shell_word(folder / "cards.pdf"));
    CHECK(file.status == 0); // one file: only the printers differ
    write_file(settings, "[finishing_cards]\nstock = \"card-a6\"\n");
    const auto apart = run_at(cups->address(), "cards " + shell_word(sample) + " --no-archive -o " +
                                                   shell_word(folder / "apart.pdf"));
    CHECK(apart.status == 1);
    CHECK(has(apart.err, "--cook-day and --finishing"));
}

TEST_CASE_FIXTURE(Kitchen, "setup names each printer once, the usual one first") {
    auto* cups = server();
    if (cups == nullptr) {
        return;
    }
    const auto outcome = setup_at(cups->address());
    CAPTURE(outcome.out);
    CHECK(has(outcome.out, "1 kitchen, 2 broken, 3 office;"));
}

TEST_CASE_FIXTURE(Kitchen, "a job that the server takes only a part of is given up and told") {
    // cupsd.conf(5), LimitRequestBody: of larger files the rest is not taken.
    const Server cups{Queues::KitchenIsUsual, "LimitRequestBody 100000\n"};
    if (!is_there(cups)) {
        return;
    }
    const thawslip::spool::Ticket ticket{
        "Bag labels", {thawslip::Length::millimetres(210), thawslip::Length::millimetres(297)}};
    cupsSetServer(cups.address().c_str());
    write_file(folder / "small.pdf", "%PDF-1.7" + std::string(65'536 - 8, ' ')); // one piece
    const auto small = thawslip::spool::print({"kitchen", {}}, folder / "small.pdf", ticket);
    write_file(folder / "large.pdf", "%PDF-1.7" + std::string(2'000'000, ' '));
    const auto large = thawslip::spool::print({"kitchen", {}}, folder / "large.pdf", ticket);
    cupsSetServer(nullptr);
    REQUIRE(small.ok());
    CHECK(cups.arrived(small.value()).document == read_file(folder / "small.pdf"));
    REQUIRE_FALSE(large.ok());
    CHECK(large.fault().trouble == thawslip::spool::Trouble::Refused);
    CHECK_FALSE(large.fault().detail.empty());
    // Nothing waits for the rest: RFC 8011, 5.3.7, job-state.
    CHECK(cups.attributes(small.value() + 1).at("job-state") == "canceled");
}

TEST_CASE_FIXTURE(Kitchen,
                  "a printer that is gone since it was found is told, and so is a server") {
    const Server cups;
    if (!is_there(cups)) {
        return;
    }
    const thawslip::spool::Ticket ticket{
        "Bag labels", {thawslip::Length::millimetres(210), thawslip::Length::millimetres(297)}};
    write_file(folder / "small.pdf", "%PDF-1.7");
    const auto told_at = [&](const std::string& address, const char* printer) {
        cupsSetServer(address.c_str());
        const auto job = thawslip::spool::print({printer, {}}, folder / "small.pdf", ticket);
        cupsSetServer(nullptr);
        REQUIRE_FALSE(job.ok());
        CHECK_FALSE(job.fault().detail.empty());
        return job.fault();
    };
    const auto attic = told_at(cups.address(), "attic");
    CHECK(attic.trouble == thawslip::spool::Trouble::Refused);
    CHECK(has(attic.detail, "printer")); // CUPS: "The printer or class does not exist."
    const auto gone = told_at(folder / "nothing", "kitchen");
    CHECK(gone.trouble == thawslip::spool::Trouble::NoServer);
    CHECK(has(gone.detail, folder / "nothing"));
}
