// SPDX-License-Identifier: MIT
#include "core/recording/recording.h"

#include <algorithm>

namespace stillbay {

const Channel* channelOf(const Recording& recording, const std::string& name)
{
    const auto found = std::find_if(recording.channels.begin(), recording.channels.end(),
                                    [&](const Channel& channel) { return channel.name == name; });
    return found == recording.channels.end() ? nullptr : &*found;
}

}  // namespace stillbay
