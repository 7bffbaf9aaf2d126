"""Operations on the calendar of the bench."""
