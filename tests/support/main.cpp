// SPDX-License-Identifier: MIT
// The main program of every test program: doctest's own, but a filter that lets no test case through is a failure, so
// that a test can never pass by being looked for under a wrong name.
#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include <cstdio>

namespace {

unsigned passed_filters = 0;

struct Counter : doctest::IReporter {
    explicit Counter(const doctest::ContextOptions&) {}
    void report_query(const doctest::QueryData&) override {}
    void test_run_start() override {}
    void test_run_end(const doctest::TestRunStats& stats) override {
        passed_filters = stats.numTestCasesPassingFilters;
    }
    void test_case_start(const doctest::TestCaseData&) override {}
    void test_case_reenter(const doctest::TestCaseData&) override {}
    void test_case_end(const doctest::CurrentTestCaseStats&) override {}
    void test_case_exception(const doctest::TestCaseException&) override {}
    void subcase_start(const doctest::SubcaseSignature&) override {}
    void subcase_end() override {}
    void log_assert(const doctest::AssertData&) override {}
    void log_message(const doctest::MessageData&) override {}
    void test_case_skipped(const doctest::TestCaseData&) override {}
};

REGISTER_LISTENER("counter", 1, Counter);

}  // namespace

int main(int argc, char** argv) {
    doctest::Context context(argc, argv);
    const int failed = context.run();
    if (context.shouldExit()) {
        return failed;  // it was only asked for its help or its list
    }
    if (passed_filters == 0) {
        std::fputs("no test case has that name, or is in that file\n", stderr);
        return 1;
    }
    return failed;
}
