// SPDX-License-Identifier: MIT
#include "ui/widgets/paced.h"

#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kBetween_ms = 100;

}  // namespace

Paced::Paced(std::function<void()> write, QObject* parent)
    : QObject(parent), m_write(std::move(write))
{
    m_pause.setSingleShot(true);
    m_pause.setInterval(kBetween_ms);
    connect(&m_pause, &QTimer::timeout, this, &Paced::run);
}

void Paced::ask()
{
    m_due = true;
    if (!m_pause.isActive())
        run();
}

void Paced::run()
{
    if (!m_due)
        return;
    m_due = false;
    m_pause.start();
    m_write();
}

}  // namespace stillbay::ui
