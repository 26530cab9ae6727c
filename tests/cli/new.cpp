// SPDX-License-Identifier: MIT
// A trip file by questions: what is answered, what nobody knows, what is broken off, and an old trip for another day.
#include "cli/program.hpp"
#include "trip/form.hpp"
#include "trip/keys.hpp"

#include <doctest/doctest.h>

#include <csignal>
#include <fstream>
#include <poll.h>
#include <pty.h>
#include <vector>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::string path_in(const std::filesystem::path& folder, const std::string& name) {
    return "'" + (folder / name).string() + "'";
}

/// Runs with these lines as its input.
Said answered(const std::string& arguments, const std::string& lines, const std::filesystem::path& folder) {
    std::ofstream(folder / "answers.txt") << lines;
    return holdwater_says(arguments + " <" + path_in(folder, "answers.txt"), folder);
}

trip::Form form_at(const std::filesystem::path& path) {
    return trip::Form(file_text(path.string()));
}

/// The program at a terminal of its own, in a folder.
class AtTerminal {
  public:
    AtTerminal(const std::filesystem::path& folder, const std::string& argument) {
        child_ = ::forkpty(&line_, nullptr, nullptr, nullptr);
        if (child_ == 0) {
            std::filesystem::current_path(folder);
            const std::string program = std::string(HOLDWATER_BINARY_DIR) + "/holdwater";
            ::execl(program.c_str(), program.c_str(), argument.c_str(), static_cast<char*>(nullptr));
            ::_exit(99);
        }
    }
    AtTerminal(const AtTerminal&) = delete;
    AtTerminal& operator=(const AtTerminal&) = delete;
    ~AtTerminal() {
        if (child_ > 0) {
            ::kill(child_, SIGKILL);
            ::waitpid(child_, nullptr, 0);
        }
        ::close(line_);
    }

    /// Whether this is said within a while, after what was waited for before.
    bool says(const std::string& words) {
        for (int quiet = 0; quiet < 600; ++quiet) {
            if (const auto at = heard_.find(words); at != std::string::npos) {
                heard_.erase(0, at + words.size());
                return true;
            }
            pollfd ready{line_, POLLIN, 0};
            if (::poll(&ready, 1, 100) > 0) {
                char part[1024];
                const ssize_t n = ::read(line_, part, sizeof part);
                if (n <= 0) {
                    return heard_.find(words) != std::string::npos;
                }
                heard_.append(part, static_cast<std::size_t>(n));
            }
        }
        return false;
    }
    void type(const std::string& keys) {
        const ssize_t n = ::write(line_, keys.data(), keys.size());
        REQUIRE(n == static_cast<ssize_t>(keys.size()));
    }
    int exit() {
        int status = 0;
        ::waitpid(std::exchange(child_, -1), &status, 0);
        return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    }

  private:
    int line_ = -1;
    pid_t child_ = -1;
    std::string heard_;
};

}  // namespace

TEST_CASE("whoever takes every default has a trip that holds, of cautious values with their reasons") {
    const auto folder = own_folder("new-defaults");
    const Said said = answered("new --ask " + path_in(folder, "a.toml"), "\nI don't know\n", folder);
    CHECK(said.exit == 0);
    CHECK(said.err.empty());
    CHECK(said.out.find("[pork-loin]") != std::string::npos);
    CHECK(said.out.find("Taken: 60 mm.") != std::string::npos);
    CHECK(said.out.find("So far, with an ordinary box that nobody has tested: a plan holds.") != std::string::npos);
    CHECK(said.out.find("taken as an ordinary box, loss ") != std::string::npos);
    CHECK(said.out.find("As it stands: a plan holds.") != std::string::npos);
    CHECK(said.out.find("Then: holdwater cards ") != std::string::npos);
    const trip::Form form = form_at(folder / "a.toml");
    CHECK(form.entry("food", "thickness").value == "\"60 mm\"");
    CHECK_FALSE(form.entry("trip", "altitude").remark.empty());
    CHECK_FALSE(form.entry("food", "cut").chosen);
}

TEST_CASE("answers stand in the file as they were said, a wrong one is asked again, ? tells more") {
    const auto folder = own_folder("new-answers");
    const Said said = answered("new --ask " + path_in(folder, "a.toml"),
                               "?\nporkloin\nPork loin\nthick\n2 1/2 in\nround\n0\n3\nintact\nmars\nus\nperhaps\nno\n"
                               "tonight\n2027-07-10T18:30\n28 L\n0.9 W/K\n1 K\n3000 ft\n41 F\n2\n2 gal\n",
                               folder);
    CHECK(said.exit == 0);
    for (const char* part : {"One of: ", "beef-top-round", "is not a known food", "does not begin with a number",
                             "One of: us", "yes or no", "is no time"}) {
        CAPTURE(part);
        CHECK(said.out.find(part) != std::string::npos);
    }
    for (const char* option : {"--kind", "--thickness", "--rules", "--serve"}) {
        CHECK(said.out.find(option) == std::string::npos);  // nobody who is asked sees names of options
    }
    const std::string text = file_text((folder / "a.toml").string());
    for (const char* line : {"kind = \"pork-loin\"\n", "thickness = \"2 1/2 in\"\n", "shape = \"round\"\n",
                             "pieces = 3\n", "cut = \"intact\"\n", "rules = \"us\"\n", "at_risk = false\n",
                             "serve = 2027-07-10T18:30:00\n", "water = \"28 L\"\n", "loss = \"0.9 W/K\"\n",
                             "altitude = \"3000 ft\"\n", "air = \"41 F\" }]\n", "pots = 2\n", "pot = \"2 gal\"\n"}) {
        CAPTURE(line);
        CHECK(text.find(line) != std::string::npos);
    }
    CHECK(said.out.find("Taken:") == std::string::npos);
}

TEST_CASE("a meal that does not hold is written and told, with the command that mends") {
    const auto folder = own_folder("new-refused");
    const Said said = answered("new --ask " + path_in(folder, "a.toml"), "wild-boar\n", folder);
    CHECK(said.exit == 0);
    CHECK(said.out.find("As it stands: no plan holds: ") != std::string::npos);
    CHECK(said.out.find("Then: holdwater mend ") != std::string::npos);
}

TEST_CASE("where a file is, nobody is asked anything") {
    const auto folder = own_folder("new-exists");
    std::ofstream(folder / "a.toml") << "mine\n";
    for (const char* how : {"--ask", "--from 'b.toml'", ""}) {
        CAPTURE(how);
        const Said said = answered("new " + path_in(folder, "a.toml") + " " + how, "", folder);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK(file_text((folder / "a.toml").string()) == "mine\n");
    }
}

TEST_CASE("with a name, or where nobody can be asked, the commented template is written") {
    const auto folder = own_folder("new-template");
    const std::string form = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/template.toml");
    CHECK(answered("new " + path_in(folder, "a.toml"), "", folder).exit == 0);
    CHECK(file_text((folder / "a.toml").string()) == form);
    AtTerminal named(folder, "new");
    CHECK(named.says("What is cooked? [pork-loin]"));  // no name, at a terminal
}

TEST_CASE("Ctrl-C keeps what was said") {
    const auto folder = own_folder("new-broken-off");
    AtTerminal terminal(folder, "new");
    REQUIRE(terminal.says("What is cooked?"));
    terminal.type("cod\n");
    REQUIRE(terminal.says("How thick"));
    terminal.type("30 mm\n");
    REQUIRE(terminal.says("look like"));
    terminal.type("\x03");
    CHECK(terminal.says("Broken off"));
    CHECK(terminal.exit() == 3);
    const trip::Form form = form_at(folder / "trip.toml");
    CHECK(form.entry("food", "kind").value == "\"cod\"");
    CHECK(form.entry("food", "thickness").value == "\"30 mm\"");
    CHECK(form.entry("food", "thickness").remark.empty());
    CHECK_FALSE(form.entry("food", "shape").remark.empty());
}

TEST_CASE("Ctrl-C before anything is said leaves a file of cautious values") {
    const auto folder = own_folder("new-broken-off-at-once");
    AtTerminal terminal(folder, "new");
    REQUIRE(terminal.says("What is cooked?"));
    terminal.type("\x03");
    CHECK(terminal.exit() == 3);
    CHECK(form_at(folder / "trip.toml").entry("food", "kind").value == "\"pork-loin\"");
}

TEST_CASE("an old trip for another day: what is asked changes, the rest and its remarks stay") {
    const auto folder = own_folder("new-from");
    const std::string old = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/trail-crew.toml");
    std::ofstream(folder / "old.toml") << old;
    const Said same =
        answered("new " + path_in(folder, "same.toml") + " --from " + path_in(folder, "old.toml"), "", folder);
    CAPTURE(same.err);
    CHECK(same.exit == 0);
    CHECK(file_text((folder / "same.toml").string()) == old);

    const trip::Form was = form_at(folder / "old.toml");
    const std::string day = was.entry("trip", "serve").value.substr(0, 10);
    const Said next = answered("new " + path_in(folder, "next.toml") + " --from " + path_in(folder, "old.toml"),
                               "Next year\n2028-13-01\n2028-10-20\nmany\n9\n", folder);
    CHECK(next.exit == 0);
    CHECK(next.out.find("no such day") != std::string::npos);
    CHECK(next.out.find("All dates move by ") != std::string::npos);
    const std::string text = file_text((folder / "next.toml").string());
    CHECK(text.find("name = \"Next year\"") != std::string::npos);
    CHECK(text.find("people = 9") != std::string::npos);
    CHECK(text.find("2028-10-20T") != std::string::npos);
    CHECK(text.find(day + "T") == std::string::npos);
    const trip::Form now = form_at(folder / "next.toml");
    CHECK(now.entries().size() == was.entries().size());
    CHECK(now.entry("fire", "pots").value == was.entry("fire", "pots").value);
    const Said missing =
        answered("new " + path_in(folder, "x.toml") + " --from " + path_in(folder, "none.toml"), "", folder);
    CHECK(missing.exit == 2);
    CHECK_FALSE(std::filesystem::exists(folder / "x.toml"));
}
