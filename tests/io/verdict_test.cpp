#include "io/verdict.h"

#include "io/terminal/headline.h"
#include "tests/io/sample_run.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

TransitionResult solved_sample() {
    TransitionResult result = sample_run().result;
    result.states.pop_back();
    return result;
}

}  // namespace

TEST_CASE("verdict: a state without a solution goes before a limit that is exceeded") {
    TransitionResult result = sample_run().result;
    result.criteria.front().passed = false;
    CHECK(verdict(result) == "not converged");
    CHECK(exit_code(result) == 3);
}

TEST_CASE("verdict: one failed criterion is over a limit") {
    TransitionResult result = solved_sample();
    result.criteria.front().passed = false;
    CHECK(verdict(result) == "over a limit");
    CHECK(exit_code(result) == 1);
}

TEST_CASE("verdict: an advisory limit that is exceeded does not count") {
    const TransitionResult result = solved_sample();
    REQUIRE(over_an_advisory_limit(result.criteria[1]));
    CHECK(verdict(result) == "within limits");
    CHECK(exit_code(result) == 0);
}

TEST_CASE("verdict: an advisory limit warns on its far side, above or below") {
    Judgement strain = sample_run().result.criteria[1];
    strain.passed.reset();
    CHECK(over_an_advisory_limit(strain));
    strain.at_least = true;
    CHECK(!over_an_advisory_limit(strain));
    strain.value = *strain.limit - 1e-4;
    CHECK(over_an_advisory_limit(strain));
    strain.at_least = false;
    CHECK(!over_an_advisory_limit(strain));
}

TEST_CASE("verdict: a value nearer to its limit than its error is undecided, on either side, and the headline says so") {
    TransitionResult result = solved_sample();
    Judgement& judgement = result.criteria.front();
    judgement.error = 0.02 * *judgement.limit;
    judgement.value = 0.99 * *judgement.limit;
    CHECK(undecided(judgement));
    CHECK(headline(result, {}).find("Nearer to its limit than the estimated error of ") != std::string::npos);
    judgement.value = 1.01 * *judgement.limit;
    CHECK(undecided(judgement));
    judgement.value = 0.97 * *judgement.limit;
    CHECK(!undecided(judgement));
    judgement.value = *judgement.limit;
    judgement.error.reset();
    CHECK(!undecided(judgement));
}
