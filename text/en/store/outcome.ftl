## outcome.rs

the-colours-of-the-chart-could = The colours of the chart could not be told apart on this photo. Take it again with the whole chart in even light.
one-piece-could-not-be-read-mark = One piece could not be read: mark its area again.
