// SPDX-License-Identifier: MIT
#include "answer/hold/hold_verdict.hpp"
#include "cli/app.hpp"
#include "cli/files/files.hpp"
#include "cli/text/hold_text.hpp"
#include "cli/json/json.hpp"
#include "cli/line/kinds.hpp"
#include "cli/line/unknown_words.hpp"
#include "cli/files/trip_file.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <memory>

namespace holdwater::cli {
namespace {

constexpr Range thicknesses{"1 mm", "400 mm", "60 mm"};
constexpr Range others{"1 mm", "2 m", "120 mm"};
constexpr Range baths{"-1 C", "100 C", "60 C"};
constexpr Range foods{"-5 C", "100 C", "5 C"};
constexpr Range moments{"0 s", "720 h", "2 h"};
constexpr Range bags{"0 m2 K/W", "1 m2 K/W", "0.01 m2 K/W"};
constexpr Range diffusivities{"1e-9 m2/s", "1e-3 m2/s", "1.3e-7 m2/s"};
constexpr Range conductivities{"0.01 W/m/K", "500 W/m/K", "0.5 W/m/K"};
constexpr Range films{"1 W/m2/K", "100000 W/m2/K", "95 W/m2/K"};
constexpr Range d_values{"0.001 s", "10000 h", "5 min"};
constexpr Range d_temperatures{"0 C", "150 C", "60 C"};
constexpr Range z_values{"1 K", "100 K", "6 K"};

struct HoldOptions {
    Given kind, shape, thickness, width, length, bath, start, target, at, contact, bag, rules, cut;
    Given diffusivity, conductivity, film, d_value, d_at, z, log10, rounding;
    bool at_risk = false;
    bool json = false;
};

void read_body(const HoldOptions& given, Options& options, heat::Body& body) {
    if (!given.shape) {
        options.fault("--shape", "option-missing", "is missing", "one of: slab, round, block, ball");
    }
    const auto shape = choice<facts::Shape>(options, "--shape", given.shape);
    body.shape = shape.value_or(facts::Shape::slab);
    body.thickness = options.need<units::Length>("--thickness", given.thickness, thicknesses);
    body.width = options.maybe<units::Length>("--width", given.width, others);
    body.length = options.maybe<units::Length>("--length", given.length, others);
    if (body.shape == facts::Shape::block) {
        for (const auto& [name, size] : {std::pair{"--width", &given.width}, std::pair{"--length", &given.length}}) {
            if (!*size) {
                options.fault(name, "option-missing", "is missing: a block needs its width and its length",
                              std::string("write it like ") + name + " \"120 mm\"");
            }
        }
    }
    // The same defaults as in a trip file: flat pieces end up on the floor of the box.
    const bool flat = body.shape == facts::Shape::slab;
    body.contact = choice<facts::Contact>(options, "--contact", given.contact)
                       .value_or(flat ? facts::Contact::bottom : facts::Contact::free);
    body.rounding = plain_number(options, "--rounding", given.rounding, 0.0, 2.0).value_or(0.0);
    if (given.rounding && shape && !(flat && body.contact == facts::Contact::free)) {
        options.fault("--rounding", "option-needs", "is only for a slab with water all around",
                      "--shape slab --contact free");
    }
}

void read_kill(const HoldOptions& given, Options& options, answer::OnePieceQuestion& question) {
    answer::KillFigures kill;
    const auto d = options.maybe<units::Duration>("--d-value", given.d_value, d_values);
    const auto at = options.maybe<units::Temperature>("--d-at", given.d_at, d_temperatures);
    const auto z = options.maybe<units::TemperatureDifference>("--z", given.z, z_values);
    const auto log10 = plain_number(options, "--log10", given.log10, 0.1, 20.0);
    if (!given.d_value && !given.d_at && !given.z && !given.log10) {
        return;
    }
    const std::pair<const char*, const Given*> all[] = {
        {"--d-value", &given.d_value}, {"--d-at", &given.d_at}, {"--z", &given.z}, {"--log10", &given.log10}};
    for (const auto& [name, text] : all) {
        if (!*text) {
            options.fault(name, "option-missing", "is missing: kill figures come all four together",
                          "--d-value \"5 min\" --d-at \"60 C\" --z \"6 K\" --log10 7");
        }
    }
    if (d && at && z && log10) {
        question.kill = answer::KillFigures{*d, *at, *z, *log10};
    }
}

void read_kind(const HoldOptions& given, Options& options, answer::OnePieceQuestion& question) {
    if (given.kind) {
        question.kind = facts::facts().find_food(*given.kind);
        if (question.kind == nullptr) {
            options.fault("--kind", "kind-unknown", "\"" + *given.kind + "\" is not a known food",
                          kinds_like(*given.kind));
        }
        return;
    }
    const bool any = given.diffusivity || given.conductivity || given.film;
    if (!any) {
        options.fault("--kind", "option-missing", "is missing",
                      "see `holdwater sources --foods`; or give --diffusivity, --conductivity and --film");
        return;
    }
    const std::tuple<const char*, const Given*, const Range*> all[] = {
        {"--diffusivity", &given.diffusivity, &diffusivities},
        {"--conductivity", &given.conductivity, &conductivities},
        {"--film", &given.film, &films}};
    for (const auto& [name, text, range] : all) {
        if (!*text) {
            options.fault(name, "option-missing", "is missing: without --kind, all three properties are needed",
                          fmt::format("write it like {} \"{}\"", name, range->example));
        }
    }
    for (const auto& [name, used] : {std::pair{"--rules", given.rules.has_value()},
                                     {"--cut", given.cut.has_value()},
                                     {"--at-risk", given.at_risk}}) {
        if (used) {
            options.fault(name, "option-needs", "says nothing without --kind", "add --kind, or leave it out");
        }
    }
}

void read_bag(const HoldOptions& given, Options& options, answer::OnePieceQuestion& question) {
    if (!given.bag) {
        return;
    }
    question.bag_given = true;
    if (given.bag->find_first_of("0123456789") != std::string::npos) {
        question.bag = options.need<units::ThermalResistance>("--bag", given.bag, bags);
    } else if (const auto bag = facts::from_name<facts::Bag>(*given.bag)) {
        question.bag = *bag;
    } else {
        unknown_word(options, "--bag", *given.bag, {"thin", "thick"}, "or its resistance, such as \"0.01 m2 K/W\"");
    }
}

answer::OnePieceQuestion question_from(const HoldOptions& given, const CLI::App& line, Options& options) {
    tell_unknown_words(line, options);
    answer::OnePieceQuestion question;
    read_kind(given, options, question);
    read_body(given, options, question.body);
    question.bath = options.need<units::Temperature>("--bath", given.bath, baths);
    question.start = options.need<units::Temperature>("--start", given.start, foods);
    question.target = options.maybe<units::Temperature>("--target", given.target, foods);
    question.at = options.maybe<units::Duration>("--at", given.at, moments);
    read_bag(given, options, question);
    question.rules = choice<facts::Ruleset>(options, "--rules", given.rules).value_or(facts::Ruleset{});
    question.cut = choice<facts::Cut>(options, "--cut", given.cut).value_or(facts::Cut::intact);
    question.at_risk = given.at_risk;
    question.diffusivity = options.maybe<units::Diffusivity>("--diffusivity", given.diffusivity, diffusivities);
    question.conductivity = options.maybe<units::Conductivity>("--conductivity", given.conductivity, conductivities);
    question.film = options.maybe<units::FilmCoefficient>("--film", given.film, films);
    read_kill(given, options, question);
    return question;
}

Json celsius_or_null(const std::optional<units::Temperature>& t) {
    return t ? Json(t->celsius()) : Json(nullptr);
}

Json reading_json(const std::optional<answer::ReadingOfPiece>& reading) {
    if (!reading) {
        return nullptr;
    }
    const answer::PieceTimes& times = reading->times;
    return {{"reach_min", minutes_or_null(times.reach)},
            {"come_up_h", hours_or_null(times.come_up)},
            {"kill_min", minutes_or_null(times.kill)},
            {"kill_7_log_min", minutes_or_null(times.kill_7)},
            {"core_c", celsius_or_null(times.core)},
            {"surface_c", celsius_or_null(times.surface)},
            {"mean_c", celsius_or_null(times.mean)},
            {"diffusivity_m2_per_s", reading->diffusivity.si()},
            {"conductivity_w_per_m_k", reading->conductivity.si()},
            {"film_w_per_m2_k", reading->film.si()}};
}

std::string hold_json(const answer::OnePieceQuestion& question, const answer::OnePieceAnswer& answer,
                      const problem::Problems& warnings) {
    Json json{{"likely", reading_json(answer.likely)}, {"cautious", reading_json(answer.cautious)}};
    if (answer.given) {
        json["given"] = reading_json(answer.given);
    }
    json["use"] = answer.eat() ? "eat" : "physics only";
    json["verdict"] = plain_spaces(hold_verdict(question, answer));
    json["target_c"] = answer.target.celsius();
    json["safe_min"] = answer.eat() ? minutes_or_null(answer.safe) : Json(nullptr);
    json["contact"] = facts::to_name(question.body.contact);
    json["nearest"] = nullptr;
    if (answer.nearest) {
        json["nearest"] = {{"target_c", answer.nearest->target.celsius()},
                           {"bath_c", answer.nearest->bath.celsius()},
                           {"safe_min", minutes_or_null(answer.nearest->safe)}};
    }
    json["safe_if_free_min"] = minutes_or_null(answer.safe_if_free);
    const auto thickest = [](const std::optional<units::Length>& l) {
        return l ? Json(units::in_millimetres(*l)) : Json(nullptr);
    };
    json["thickest_mm"] = {{"slab", thickest(answer.thickest_slab)}, {"round", thickest(answer.thickest_round)}};
    return plain_spaces(answer_text(json, warnings));
}

Exit hold(const HoldOptions& given, const CLI::App& line) {
    Options options;
    const answer::OnePieceQuestion question = question_from(given, line, options);
    if (!options.problems().empty()) {
        tell(options.problems());
        return Exit::bad_input;
    }
    const auto answer = answer::answer_one_piece(question);
    if (!answer) {
        tell(answer.problems());
        return Exit::bad_input;
    }
    const problem::Problems warnings = hold_warnings(question, *answer);
    fmt::print("{}", given.json ? hold_json(question, *answer, warnings) : hold_text(question, *answer, warnings));
    if (answer->why == answer::Why::kind_refused) {
        return Exit::refused;
    }
    return exit_for(warnings);
}

}  // namespace

Command add_hold(CLI::App& program) {
    const auto given = std::make_shared<HoldOptions>();
    HoldOptions& to = *given;
    CLI::App* line = program.add_subcommand("hold", "one piece in a steady bath: how long, and may it be eaten");
    line->add_option("--kind", to.kind, "food, such as pork-loin: see `holdwater sources --foods`");
    line->add_option("--shape", to.shape, "slab, round, block or ball");
    line->add_option("--thickness", to.thickness, "smallest way through; diameter of a round or ball; \"60 mm\"");
    line->add_option("--width", to.width, "of a block");
    line->add_option("--length", to.length,
                     "of a block or round; without it a round is so long that its ends do not matter");
    line->add_option("--bath", to.bath, "temperature of the water, all the time; \"60 C\", -1 to 100 C");
    line->add_option("--start", to.start, "temperature of the food as it goes in; \"5 C\", -5 to 100 C");
    line->add_option("--target", to.target, "wanted core temperature; half a kelvin short of the bath if not given");
    line->add_option("--at", to.at, "also tell core, surface and mean temperature after this time; \"2 h\"");
    line->add_option("--contact", to.contact, "free, bottom (slabs, if not given) or stacked");
    line->add_option("--bag", to.bag, "thin (if not given), thick, or its resistance \"0.01 m2 K/W\"");
    line->add_option("--rules", to.rules, "whose food-safety rules: " + rules_listed(" (if not given)"));
    line->add_option("--cut", to.cut, "intact (if not given), tied, tenderised, injected, rolled, stuffed or minced");
    line->add_flag("--at-risk", to.at_risk, "someone who eats is pregnant, very young, old or ill");
    line->add_flag("--json", to.json, "every number, not rounded");
    const std::string expert =
        "Your own figures (their column is \"given\"; what is left out is the kind's likely figure)";
    line->add_option("--diffusivity", to.diffusivity, "\"1.3e-7 m2/s\"")->group(expert);
    line->add_option("--conductivity", to.conductivity, "\"0.5 W/m/K\"")->group(expert);
    line->add_option("--film", to.film, "\"95 W/m2/K\", the whole way to the water unless --bag is given too")
        ->group(expert);
    line->add_option("--d-value", to.d_value, "time for one log10 of kill at --d-at; \"5 min\"")->group(expert);
    line->add_option("--d-at", to.d_at, "\"60 C\"")->group(expert);
    line->add_option("--z", to.z, "\"6 K\"")->group(expert);
    line->add_option("--log10", to.log10, "log10 of kill wanted, such as 7")->group(expert);
    line->add_option("--rounding", to.rounding, "0 slab to 2 ball: a slab with rounded sides")->group(expert);
    return {line, [given, line] { return hold(*given, *line); }, true};
}

}  // namespace holdwater::cli
