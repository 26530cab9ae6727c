// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/files/data.hpp"
#include "cli/files/files.hpp"
#include "cli/files/stamp.hpp"
#include "cli/files/trip_file.hpp"
#include "cli/json/review_json.hpp"
#include "cli/line/options.hpp"
#include "cli/picture/chart.hpp"
#include "cli/text/review_text.hpp"
#include "trip/read_log.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <optional>

namespace holdwater::cli {
namespace {

const OptionRow review_log{.name = "LOG",
                           .help = "log of the bath (CSV): time_hhmm,bath_c,note; a note says \"food in\"",
                           .required = true,
                           .example = "log.csv",
                           .holds = Holds::log_file};
const OptionRow review_preview{.name = "--preview", .help = "draw a chart, STEM-review.png, STEM of the log"};

struct ReviewOptions {
    std::string trip;
    std::string log;
    bool json = false;
    bool preview = false;
    std::string out;
};

/// Faults that stop a review, as JSON where that was asked for. A refused food gets no verdict, which is as good as
/// "throw away" for the exit code.
Exit stopped(const problem::Problems& problems, bool json) {
    const Exit exit = exit_for(problems);
    if (json) {
        problem::Problems rest;
        problem::Problems errors;
        for (const problem::Problem& p : problems) {
            (p.severity == problem::Severity::error ? errors : rest).push_back(p);
        }
        fmt::print("{}", no_review_json(exit == Exit::refused, errors, rest));
    }
    tell(problems);
    if (exit == Exit::refused && !json) {
        fmt::print("No verdict: the rules refuse this food in a bath. Do not eat it from the bath alone.\n");
    }
    return exit;
}

bool looks_like(const std::string& path, std::string_view ending) {
    return path.ends_with(ending);
}

/// The chart beside the answer; its path goes where it does not disturb JSON.
Exit write_chart(const ReviewOptions& options, const trip::Trip& trip, const trip::Log& log,
                 const answer::Review& review) {
    const std::string name = stem_of(options.log);
    const auto png = chart_png(review_card(trip, log, review), trip.name);
    if (!png) {
        tell(png.problems());
        return Exit::our_fault;
    }
    const std::string path = fmt::format("{}/{}-review.png", options.out, name);
    const auto written = write_file(path, *png);
    if (!written) {
        tell(written.problems());
        return Exit::bad_input;
    }
    if (options.json) {
        tell_line(path);
    } else {
        fmt::print("{}\n", path);
    }
    return Exit::done;
}

Exit exit_of(answer::Verdict verdict, const problem::Problems& remarks) {
    switch (verdict) {
        case answer::Verdict::eat:
            return exit_for(remarks);
        case answer::Verdict::not_done:
        case answer::Verdict::finish_and_eat_next:
        case answer::Verdict::finish_and_eat_now:
            return Exit::check;
        case answer::Verdict::throw_away:
            return Exit::refused;
    }
    return Exit::our_fault;
}

Exit review_trip(const ReviewOptions& options) {
    if (looks_like(options.trip, ".csv") && looks_like(options.log, ".toml")) {
        return stopped({problem::error("arguments-swapped", "the trip comes first, then the log",
                                       fmt::format("holdwater review {} {}", options.log, options.trip))},
                       options.json);
    }
    const auto trip = load_trip(options.trip);
    if (!trip) {
        return stopped(trip.problems(), options.json);
    }
    const auto text = read_file(options.log);
    const auto log = text ? trip::read_log(*text, options.log) : problem::Result<trip::Log>(text.problems());
    if (!log) {
        return stopped(log.problems(), options.json);
    }
    auto review = answer::review(*trip, *log);
    if (!review) {
        return stopped(review.problems(), options.json);
    }
    // The reader's own word on a gap comes before it is known whether it matters; the review says it again, knowing.
    problem::Problems remarks = trip.problems();
    std::copy_if(log.problems().begin(), log.problems().end(), std::back_inserter(remarks),
                 [](const problem::Problem& p) { return p.code != "log-gap"; });
    remarks.insert(remarks.end(), review->remarks.begin(), review->remarks.end());
    review.value().remarks = remarks;
    tell(remarks);
    const auto stamp = own_stamp(*trip);
    if (!stamp) {
        tell(stamp.problems());
        return Exit::our_fault;
    }
    fmt::print("{}",
               options.json ? review_json(*trip, *log, *review, *stamp) : review_text(*trip, *log, *review, *stamp));
    // A chart that cannot be written never hides the verdict: throwing away stays the exit code.
    const Exit exit = exit_of(review->verdict, remarks);
    const Exit drawn = options.preview ? write_chart(options, *trip, *log, *review) : Exit::done;
    return exit == Exit::refused || drawn == Exit::done ? exit : drawn;
}

Act read_review(Options& options) {
    const ReviewOptions given{options.file(trip_row), options.file(review_log), options.has(json_row),
                              options.has(review_preview), options.folder(chart_folder_row)};
    return [given] { return review_trip(given); };
}

}  // namespace

Command review_command() {
    return {.name = "review",
            .group = headings::trip,
            .summary = "tell what a written log of a trip means: eat, finish or throw away",
            .rows = {trip_row, review_log, json_row, review_preview, chart_folder_row},
            .examples = {"review my-trip.toml written-log.csv",
                         "review my-trip.toml written-log.csv --preview --out charts"},
            .refuses = "throw it away, or the rules refuse this food in a bath",
            .checks = "not done yet, or finish it over the fire and eat; or something should be checked",
            .read = read_review};
}

}  // namespace holdwater::cli
