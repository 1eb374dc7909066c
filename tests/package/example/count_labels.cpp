// From a day's description to a PDF of labels, stage by stage, as DEVELOPERS.md draws the flow.
//     count_labels DAY.toml labels.pdf
#include <fstream>
#include <iostream>
#include <stdexcept>
#include <thawslip/base/text_file.h>
#include <thawslip/code/message.h>
#include <thawslip/intake/day_file.h>
#include <thawslip/intake/storage_file.h>
#include <thawslip/layout/compose.h>
#include <thawslip/layout/files/layout_file.h>
#include <thawslip/layout/files/stock_file.h>
#include <thawslip/render/pdf.h>
#include <thawslip/typeset/font_set.h>
#include <thawslip/wording/prints.h>
#include <thawslip/wording/style.h>

using namespace thawslip;

namespace {

const std::string data = DATA_FOLDER;
const std::string faces = "/usr/share/fonts/truetype/";

/// What is wrong goes to standard error, each with its line; then nothing is printed.
void stop_at(const Diagnostics& faults, const toml::Document& document) {
    for (const auto& fault : faults) {
        std::cerr << to_text(fault, document.text());
    }
    if (has_errors(faults)) {
        throw std::runtime_error{"nothing was printed"};
    }
}

toml::Document open(const std::string& file) {
    auto text = read_text_file(file, std::size_t{1} << 20U);
    if (!text) {
        throw std::runtime_error{to_text(to_diagnostic(text.fault()))};
    }
    Diagnostics faults;
    auto document = toml::parse(std::move(text).value(), file, faults);
    stop_at(faults, document);
    return document;
}

kitchen::Plan plan_of(const toml::Document& document) {
    Diagnostics faults;
    const auto reading = intake::read_day(document, faults);
    stop_at(faults, document);
    auto plan = kitchen::plan(reading.day, intake::built_in_storage(), faults);
    stop_at(faults, document);
    return plan;
}

/// A label: one bag of one package.
struct Label {
    const kitchen::PlannedPackage& package;
    const kitchen::Bag& bag;
};

std::vector<Label> labels_of(const kitchen::Plan& plan) {
    std::vector<Label> labels;
    for (const auto& package : plan.packages) {
        for (const auto& bag : package.bags) {
            labels.push_back({package, bag});
        }
    }
    return labels;
}

/// What the labels and their codes say, told one by one.
layout::Source words_of(const kitchen::Plan& plan, const std::vector<Label>& labels) {
    const auto style = wording::style_for(wording::shipped_language("en"), {});
    return {labels.size(),
            [&plan, &labels, style](std::size_t i) {
                return wording::bag_label(plan, labels[i].package, labels[i].bag, style);
            },
            [&labels](std::size_t i) {
                return code::texts(code::message_for(labels[i].package, labels[i].bag));
            }};
}

layout::Layouts label_layout() {
    Diagnostics faults;
    const auto document = open(data + "/layouts/label/wide.toml");
    const auto layout = layout::read_layout(document, "wide", faults);
    stop_at(faults, document);
    return {{wording::Kind::BagLabel, *layout}};
}

typeset::FontSet fonts() {
    auto set = typeset::make_font_set({{faces + "clear-sans/ClearSans-Regular.ttf"},
                                       {faces + "clear-sans/ClearSans-Medium.ttf"},
                                       {faces + "clear-sans/ClearSans-Bold.ttf"}});
    if (!set) {
        throw std::runtime_error{set.fault()};
    }
    return std::move(set).value();
}

int print(const std::string& day, const std::string& pdf) {
    const auto plan = plan_of(open(day));
    const auto labels = labels_of(plan);
    const auto stock = layout::load_stock(data + "/layouts/stock/letter-2x5-4x2in.toml").stock;
    layout::Target target;
    target.stock = stock.value();
    const auto layouts = label_layout();
    const auto faces_of_labels = fonts();
    const auto fitting = layout::fit(words_of(plan, labels), layouts, target, faces_of_labels);
    if (!fitting) {
        throw std::runtime_error{"the words of a label do not fit"};
    }
    std::vector<layout::Frame> frames;
    for (int sheet = 0; sheet < fitting.value().sheets; ++sheet) {
        frames.push_back(
            layout::draw_sheet(fitting.value(), sheet, layouts, target, faces_of_labels));
    }
    std::ofstream{pdf, std::ios::binary}
        << render::pdf(frames, faces_of_labels, {"Bag labels", "en", std::nullopt});
    std::cout << labels.size() << " labels on " << frames.size() << " pages\n";
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    try {
        return argc == 3 ? print(argv[1], argv[2]) : 2;
    } catch (const std::exception& failure) {
        std::cerr << failure.what() << "\n";
        return 1;
    }
}
