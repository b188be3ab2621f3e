"""From a study to primitives on named layers; knows no toolkit."""
