namespace Criteria.Engine;

/// <summary>The engine did not come to an end as it must: a fault of the program, never of a case.</summary>
public sealed class AssessmentFaultException : Exception
{
    /// <summary>A fault without a message.</summary>
    public AssessmentFaultException()
    {
    }

    /// <summary>A fault.</summary>
    public AssessmentFaultException(string message)
        : base(message)
    {
    }

    /// <summary>A fault with its cause.</summary>
    public AssessmentFaultException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
