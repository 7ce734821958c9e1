// SPDX-License-Identifier: MIT
// Whatever craft the reader takes: finite numbers or a reason, the same bits each time, on one
// thread or two, and from its file, today's or an old one.
//
// STILLBAY_RANDOM_CRAFTS says how many crafts; a shard takes its part of them, so that ctest can
// run several shards beside each other.
#include "app/commands/report_json.h"
#include "app/commands/search_json.h"
#include "core/advice/uncertainty.h"
#include "core/assess/assess.h"
#include "core/setup/text.h"
#include "core/setup/validate.h"
#include "tests/assess/crafts.h"
#include "tests/setup/random_setup.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cstdlib>
#include <iostream>
#include <map>
#include <random>
#include <string>
#include <utility>

namespace stillbay {
namespace {

using OrderedJson = nlohmann::ordered_json;

constexpr unsigned kShards = 20;
constexpr unsigned kUsualCrafts = 2000;
// One craft of so many:
constexpr unsigned kEachAnew = 4;  // is assessed with nothing kept too; in a long run each is
constexpr unsigned kEachUncertain = 100;
constexpr unsigned kEachSearched = 200;

// A tenth of the throttle each, for a sweep costs what it spans; extremes_test sweeps all of it.
AssessOptions pointsOf(unsigned number)
{
    const double from = 0.1 * (number % 10);
    return {Grid{from, from + 0.1, 0.1}, {0.0, 400.0, 100.0}, true};
}

unsigned craftsAsked()
{
    const char* const asked = std::getenv("STILLBAY_RANDOM_CRAFTS");
    return asked ? static_cast<unsigned>(std::strtoul(asked, nullptr, 10)) : kUsualCrafts;
}

// By turns far from anything that flies, and near a sample, so that many are computed to the end.
Setup craftOf(unsigned number)
{
    if (number % 3 == 0)
        return test::drawSetup(number);
    static const std::map<unsigned, Setup> samples{{0, test::sampleCraft("reedbed")},
                                                   {1, test::sampleCraft("quarry")},
                                                   {2, test::sampleCraft("saltmarsh")}};
    std::mt19937 random(number);
    const double spread = number % 3 == 1 ? 1.3 : 3.0;
    while (true)  // a distorted craft may break a rule between fields, and is no craft then
        if (Setup craft = test::distorted(samples.at(number / 3 % 3), random, spread);
            validate(craft))
            return craft;
}

// All of an answer or of its refusal; two that differ in one bit differ in this text, for each
// number stands in it with all its digits. The JSON throws on a number that is not finite.
template <class Answer, class ToJson>
std::string textOf(const Result<Answer>& answer, const ToJson& toJson)
{
    if (answer)
        return toJson(*answer);
    EXPECT_NE(answer.error().code, Errc::Internal);
    EXPECT_FALSE(english(answer.error().what).empty());
    return english(answer.error().what) + ": " + answer.error().where;
}

std::string textOf(const Result<Assessment>& answer)
{
    if (!answer) {
        EXPECT_FALSE(answer.error().where.empty()) << english(answer.error().what);
    }
    return textOf(answer, [](const Assessment& found) { return reportJson(found); });
}

void renameBack(OrderedJson& owner, const char* now, OrderedJson& to, const char* then)
{
    OrderedJson value = owner.at(now);  // the new place may move all others
    owner.erase(now);
    to[then] = std::move(value);
}

// The same craft as the drafts of the format had it.
std::string asVersion0(const std::string& text)
{
    OrderedJson root = OrderedJson::parse(text);
    root["version"] = 0;
    renameBack(root["tube"], "hardness_shore_a", root["tube"], "shore_a");
    if (root.contains("tunes"))
        for (OrderedJson& tune : root["tunes"])
            renameBack(tune["tube"], "hardness_shore_a", tune["tube"], "shore_a");
    OrderedJson& motor = root["drive"]["motor"];
    renameBack(motor, "kv_rpm_per_v", motor, "kv");
    renameBack(root["bay"], "travel_mm", root, "travel_mm");
    return root.dump();
}

stillbay::Setup readBack(const std::string& file)
{
    const Result<LoadedSetup> back = readSetup(file);
    if (back)
        return back->setup;
    ADD_FAILURE() << english(back.error().what) << ": " << back.error().where;
    return {};
}

std::string uncertaintyText(const Setup& craft, const Assessment& answer, std::size_t threads)
{
    return textOf(uncertainty(craft, {.crafts = 4, .threads = threads}),
                  [&](const Uncertainty& found) { return reportJson(answer, &found); });
}

std::string searchText(const Setup& craft, std::size_t threads)
{
    SearchSpace space;
    for (const Variable variable : {Variable::FreeLength, Variable::Stretch})
        if (canSet(craft.mounts, variable))
            space.variables.push_back(usualRange(craft, variable));
    RecommendOptions options{{}, 2, 2};
    options.search.samples = 4;
    options.search.starts = 2;
    options.search.robustSamples = 4;
    options.search.threads = threads;
    return textOf(recommend({craft, space}, options),
                  [](const Recommendation& found) { return searchJson(found); });
}

struct RandomCrafts : testing::TestWithParam<unsigned> {};

INSTANTIATE_TEST_SUITE_P(Shard, RandomCrafts, testing::Range(0U, kShards));

// Oracle: identity.
TEST_P(RandomCrafts, AreAnsweredOrRefusedAlikeEachTime)
{
    const unsigned all = craftsAsked();
    const unsigned first = static_cast<unsigned>(std::uint64_t{all} * GetParam() / kShards);
    const unsigned last = static_cast<unsigned>(std::uint64_t{all} * (GetParam() + 1) / kShards);
    std::map<std::string, unsigned> outcomes;
    Assessor keeping;  // what it kept of the craft before must not show
    for (unsigned number = first; number < last; ++number) {
        SCOPED_TRACE("craft " + std::to_string(number));
        const stillbay::Setup craft = craftOf(number);
        const AssessOptions points = pointsOf(number);
        const Result<Assessment> answer = keeping.assess(craft, points);
        const std::string text = textOf(answer);
        const Result<std::string> file = writeSetup(craft);
        ASSERT_TRUE(file) << english(file.error().what);
        const stillbay::Setup back = readBack(*file), old = readBack(asVersion0(*file));
        EXPECT_EQ(back, craft);
        EXPECT_EQ(old, craft);
        EXPECT_EQ(textOf(keeping.assess(old, points)), text);
        if (all > kUsualCrafts || number % kEachAnew == 0) {
            EXPECT_EQ(textOf(assess(back, points)), text);
        }
        if (answer && number % kEachUncertain == 0) {
            EXPECT_EQ(uncertaintyText(craft, *answer, 1), uncertaintyText(craft, *answer, 2));
        }
        if (number % kEachSearched == 0) {
            EXPECT_EQ(searchText(craft, 1), searchText(craft, 2));
        }
        ++outcomes[answer                                  ? "answered"
                   : answer.error().code == Errc::NoAnswer ? "without an answer"
                                                           : "refused"];
        ASSERT_FALSE(HasFailure());
    }
    std::cout << "crafts " << first << " to " << last << ":";
    for (const auto& [outcome, count] : outcomes)
        std::cout << ' ' << count << ' ' << outcome << ',';
    std::cout << '\n';
    if (last - first >= 50) {
        EXPECT_GT(outcomes["answered"], (last - first) / 10);
        EXPECT_LT(outcomes["answered"], last - first);
    }
}

}  // namespace
}  // namespace stillbay
