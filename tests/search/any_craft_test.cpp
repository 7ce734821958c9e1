// SPDX-License-Identifier: MIT
// Whatever craft the reader takes, a search gives finite numbers or says why there are none.
#include "app/commands/search_json.h"
#include "core/setup/validate.h"
#include "tests/assess/crafts.h"
#include "tests/setup/random_setup.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace stillbay {
namespace {

SearchOptions few(std::size_t builds)
{
    SearchOptions options;
    options.samples = 12;
    options.starts = 1;
    options.robustSamples = builds;
    return options;
}

SearchSpace spaceAround(const Setup& craft)
{
    SearchSpace space;
    for (const Variable variable : {Variable::FreeLength, Variable::Stretch, Variable::Height,
                                    Variable::Direction, Variable::BalanceX})
        if (canSet(craft.mounts, variable))
            space.variables.push_back(usualRange(craft, variable));
    return space;
}

// searchJson() throws on a number that is not finite. @return whether there was an answer.
bool searched(const Setup& craft, std::size_t builds)
{
    const auto found = recommend({craft, spaceAround(craft)}, {few(builds), 3, 3});
    if (!found) {
        RC_ASSERT(found.error().code != Errc::Internal);
        RC_ASSERT(!english(found.error().what).empty());
        return false;
    }
    for (const Candidate& candidate : found->candidates) {
        RC_ASSERT(candidate.evaluation.feasible());
        RC_ASSERT(validate(withDesign(craft, candidate.design)).has_value());
    }
    RC_ASSERT(!searchJson(*found).empty());
    return true;
}

RC_GTEST_PROP(AnyCraft, IsSearchedOrRefused, ())
{
    searched(test::drawSetup(), 10);
}

// Crafts that fly, with a few numbers far off.
RC_GTEST_PROP(AnyCraft, OddSamplesAreSearchedOrRefused, ())
{
    auto craft = test::sampleCraft(*rc::gen::element("reedbed", "saltmarsh", "quarry"));
    const auto factor = [] {
        return std::exp2(*rc::gen::inRange(-20, 21) / 10.0);
    };
    for (Part& part : craft.bay.parts)
        part.mass_g *= factor();
    craft.drive.unbalance_g_mm *= factor();
    craft.bay.travel_mm *= factor();
    craft.flight.cruise_throttle[1] =
        craft.flight.cruise_throttle[0] +
        *rc::gen::inRange(1, 700) / 1000.0 * (1 - craft.flight.cruise_throttle[0]);
    RC_PRE(validate(craft).has_value());
    RC_CLASSIFY(searched(craft, 0), "answered");
}

}  // namespace
}  // namespace stillbay
