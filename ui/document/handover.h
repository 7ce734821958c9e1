// SPDX-License-Identifier: MIT
#pragma once

#include <queue>

#include <mutex>
#include <utility>

namespace stillbay::ui {

/// Values on their way from a job's thread to the window's, in the order given. QFuture hands them
/// over as safely, but by what is compiled into Qt, where the thread sanitizer does not see it.
template <class T>
class Handover final {
public:
    void give(T value)
    {
        const std::scoped_lock lock(m_mutex);
        m_values.push(std::move(value));
    }
    T take()  ///< the oldest; there must be one
    {
        const std::scoped_lock lock(m_mutex);
        T value = std::move(m_values.front());
        m_values.pop();
        return value;
    }

private:
    std::mutex m_mutex;
    std::queue<T> m_values;
};

}  // namespace stillbay::ui
