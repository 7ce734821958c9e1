// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <cstddef>
#include <stop_token>
#include <utility>
#include <vector>

namespace stillbay::ui {

/// The answers to so many questions, those that were asked last.
template <class Question, class Answer>
class LastAnswers final {
public:
    explicit LastAnswers(std::size_t most) : m_most(most) {}

    /// What was kept, else what work() gives; that is kept unless it was stopped meanwhile.
    template <class Work>
    Answer of(const Question& question, const std::stop_token& stop, const Work& work)
    {
        const auto kept = std::find_if(m_answers.begin(), m_answers.end(),
                                       [&](const auto& each) { return each.first == question; });
        if (kept != m_answers.end()) {
            std::rotate(kept, kept + 1, m_answers.end());
            return m_answers.back().second;
        }
        Answer answer = work();
        if (stop.stop_requested())
            return answer;  // not the question's
        if (m_answers.size() == m_most)
            m_answers.erase(m_answers.begin());
        return m_answers.emplace_back(question, std::move(answer)).second;
    }

private:
    std::size_t m_most;
    std::vector<std::pair<Question, Answer>> m_answers;  // the one that was asked last is last
};

}  // namespace stillbay::ui
