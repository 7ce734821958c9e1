// SPDX-License-Identifier: MIT
#pragma once

#include <QtGlobal>

namespace stillbay::ui {

/// For how long a test waits for what must come. A sanitizer's tests are slower: preset sanitizers
/// asks for more.
inline const int kPatience_ms = [] {
    const int asked_s = qEnvironmentVariableIntValue("STILLBAY_TEST_PATIENCE_S");
    return 1000 * (asked_s > 0 ? asked_s : 30);
}();

}  // namespace stillbay::ui
