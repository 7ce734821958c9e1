// SPDX-License-Identifier: MIT
#include "core/setup/validate.h"
#include "tests/setup/random_setup.h"
#include "tests/setup/setup_text.h"

#include <rapidcheck/gtest.h>

namespace stillbay {
namespace {

constexpr int kSetupsPerCase = 12;  // × RapidCheck's 100 cases

RC_GTEST_PROP(RoundTrip, SavingAndLoadingChangesNothing, ())
{
    for (int i = 0; i < kSetupsPerCase; ++i) {
        const stillbay::Setup setup = test::drawSetup();
        const auto text = writeSetup(setup);
        if (!text)
            RC_FAIL(english(text.error().what) + ": " + text.error().where);
        const auto loaded = readSetup(*text);
        if (!loaded)
            RC_FAIL(english(loaded.error().what) + ": " + loaded.error().where);
        RC_ASSERT(loaded->setup == setup);
        RC_ASSERT(writeSetup(loaded->setup).value() == *text);
        RC_ASSERT(loaded->warnings.empty() == !test::hasExtras(setup));
    }
}

}  // namespace
}  // namespace stillbay
