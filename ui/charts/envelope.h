// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <memory>
#include <vector>

namespace stillbay::ui {

/// Smallest and largest value.
struct Extent {
    double least = 0.0, most = 0.0;

    bool operator==(const Extent&) const = default;
};

/// Extents of any stretch of a long series at little cost, however long: blocks of samples, blocks
/// of blocks, and so on are kept. The series is shared, not copied.
class Envelope {
public:
    Envelope() = default;
    /// @param values  finite
    explicit Envelope(std::shared_ptr<const std::vector<double>> values);

    std::size_t size() const { return m_values ? m_values->size() : 0; }
    double at(std::size_t k) const { return (*m_values)[k]; }
    /// Of samples from … to − 1. @param from  < to ≤ size()
    Extent of(std::size_t from, std::size_t to) const;

private:
    std::shared_ptr<const std::vector<double>> m_values;
    // Each over kFanOut of the one before; copies share them.
    std::shared_ptr<const std::vector<std::vector<Extent>>> m_levels;
};

}  // namespace stillbay::ui
