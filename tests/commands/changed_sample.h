// SPDX-License-Identifier: MIT
#pragma once

#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>
#include <unistd.h>

namespace stillbay {

inline constexpr std::string_view kReedbed = STILLBAY_SAMPLES_DIR "/reedbed.stillbay";

// A changed copy of the sample in a file of its own.
class ChangedSample {
public:
    template <class Change>
    explicit ChangedSample(Change change, std::string_view sample = kReedbed)
    {
        auto json = nlohmann::ordered_json::parse(std::ifstream(std::string(sample)));
        change(json);
        m_path = std::filesystem::temp_directory_path() /
                 ("stillbay-commands-test-" + std::to_string(::getpid()) + ".stillbay");
        std::ofstream(m_path) << json.dump();
    }
    ~ChangedSample() { std::filesystem::remove(m_path); }
    std::string path() const { return m_path.string(); }

private:
    std::filesystem::path m_path;
};

// A bay that crushes its tubes: valid, but there is no answer to give.
inline void crush(nlohmann::ordered_json& json)
{
    json["tube"]["hardness_shore_a"] = 20;
    json["mounts"]["free_length_mm"] = 60;
    json["mounts"]["stretch"] = 1.0;
    json["bay"]["parts"][0]["mass_g"] = 3000;
    for (auto& point : json["mounts"]["points"])
        point["elevation_deg"] = -85;
}

}  // namespace stillbay
