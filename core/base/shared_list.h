// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <memory>
#include <utility>
#include <vector>

namespace stillbay {

/// A long list that is copied often and hardly ever changed: copies share it until one is changed.
template <class T>
class SharedList {
public:
    SharedList() : SharedList(std::vector<T>{}) {}
    SharedList(std::vector<T> list) : m_list(std::make_shared<std::vector<T>>(std::move(list))) {}

    operator const std::vector<T>&() const { return *m_list; }
    auto begin() const { return std::as_const(*m_list).begin(); }
    auto end() const { return std::as_const(*m_list).end(); }
    std::size_t size() const { return m_list->size(); }
    bool empty() const { return m_list->empty(); }
    const T& operator[](std::size_t i) const { return (*m_list)[i]; }
    const T& at(std::size_t i) const { return m_list->at(i); }
    const T& front() const { return m_list->front(); }
    const T& back() const { return m_list->back(); }

    /// The list to be changed: its own, whoever shared it before.
    std::vector<T>& own()
    {
        if (m_list.use_count() > 1)
            m_list = std::make_shared<std::vector<T>>(*m_list);
        return *m_list;
    }

private:
    std::shared_ptr<std::vector<T>> m_list;
};

}  // namespace stillbay
