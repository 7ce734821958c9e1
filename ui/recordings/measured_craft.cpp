// SPDX-License-Identifier: MIT
#include "ui/recordings/measured_craft.h"

namespace stillbay::ui {

Setup measuredCraft(Setup setup)
{
    setup.name.clear();
    setup.notes.clear();
    setup.tunes.clear();
    setup.recordings.clear();
    setup.sources.clear();
    setup.limits = {};
    return setup;
}

}  // namespace stillbay::ui
